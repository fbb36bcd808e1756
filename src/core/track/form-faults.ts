import type { Fault } from '../units/problem.ts';
import { deg, fault, mm } from './fault.ts';
import type { TrackInput } from './input.ts';
import type { Turnout, TurnoutForm } from './turnout.ts';

/** What is wrong with a turnout's own figures. */
export function formFaults({ turnouts }: TrackInput): readonly Fault[] {
  return turnouts.flatMap((turnout) => {
    const found = [...sizeFaults(turnout), ...angleFaults(turnout)];
    return found.length > 0 || turnout.form.kind !== 'template' ? found : templateFaults(turnout.form, turnout.at);
  });
}

/** Every figure of a form with its path, those inside an arc too. */
function figures({ form, at }: Turnout): readonly (readonly [path: string, name: string, value: number])[] {
  return Object.entries(form).flatMap(([key, value]): readonly (readonly [string, string, number])[] => {
    const path = `${at}.${key === 'number' ? 'frog' : key}`;
    if (typeof value === 'number') return [[path, key, value]];
    if (typeof value !== 'object' || value === null) return [];
    return Object.entries(value).flatMap(([name, one]) =>
      typeof one === 'number' ? [[`${path}.${name}`, name, one] as const] : [],
    );
  });
}

function sizeFaults(turnout: Turnout): readonly Fault[] {
  return figures(turnout)
    .filter(([, name, value]) => !(value > 0 || (name === 'lead' && value === 0)))
    .map(([path, name, value]) =>
      fault('length-impossible', path, { what: `${name} is ${value}`, mend: 'write more than 0' }),
    );
}

/** Beyond a right angle a turnout is none, and its tangents run away. */
function angleFaults(turnout: Turnout): readonly Fault[] {
  return figures(turnout)
    .filter(([, name, value]) => name === 'angle' && value > Math.PI / 2 + 1e-9)
    .map(([path, , value]) =>
      fault('angle-impossible', path, {
        what: `the angle is ${deg(value)}`,
        mend: 'write the angle between the ways, at most 90°',
      }),
    );
}

type Template = Extract<TurnoutForm, { readonly kind: 'template' }>;

/** Lengths of a template that leave its branch no room. */
function templateFaults({ straight, angle, radius, lead, branch }: Template, at: string): readonly Fault[] {
  if (radius === null && 2 * lead >= straight) {
    const what = `a lead of ${mm(lead)} leaves no room for the branch to turn within ${mm(straight)}`;
    return [
      fault('template-impossible', `${at}.lead`, {
        what,
        mend: `less than ${mm(straight / 2)}, or measure the radius`,
      }),
    ];
  }
  const turning = lead + (radius ?? (straight - 2 * lead) / (2 * Math.tan(angle / 2))) * angle;
  if (branch === null || branch >= turning - 1e-6) return [];
  const what = `the branch is ${mm(branch)} long, and its lead and arc alone are ${mm(turning)}`;
  return [
    fault('template-impossible', `${at}.branch`, {
      what,
      mend: 'measure the branch along its middle to its end, or leave it out',
    }),
  ];
}
