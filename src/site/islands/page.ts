import { startLook } from './look.ts';
import { startSwitches } from './switches.ts';
import { startTicks } from './ticks.ts';

startSwitches();
startTicks();
startLook();
