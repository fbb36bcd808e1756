import type { Finding } from '../finding.ts';
import { fromTheFuture, upkeepFindings } from './doubts.ts';
import type { LogRecord } from './record.ts';
import { upkeepOf } from './upkeep.ts';

/** What only a command that knows the day can find: upkeep that is due, and entries of days to come. `today` is an ISO date. */
export function datedFindings(records: readonly LogRecord[], today: string): Finding[] {
  return [...fromTheFuture(records, today), ...upkeepFindings(upkeepOf(records, today))];
}
