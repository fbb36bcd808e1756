import { startFolds } from './folds.ts';
import { startLook } from './look.ts';
import { startScrolls } from './scrolls.ts';
import { startSwitches } from './switches.ts';
import { startTicks } from './ticks.ts';

startSwitches();
startTicks();
startLook();
startScrolls();
startFolds();
