import type { Part } from '../../stock/part.ts';
import { type Sentence, say } from '../../units/say.ts';
import { type Draft, draft } from './draft.ts';
import { counted, instanceIds } from './words.ts';

function markLine(part: Part): Sentence {
  const label = part.places.map((place) => `${place.label} on ${place.id}`).join(', ');
  const marks = part.places[0]?.marks.length ?? 0;
  return marks === 0 ? say`${label}.` : say`${label}; ${counted(marks, 'mating mark')} on each.`;
}

/** Labels and mating marks, before a piece can be taken for another. */
export function marking(parts: readonly Part[]): Draft[] {
  const lead = say`Pencil each label where the drawing of the part shows it, with what mates there, which way is up and which end is which.`;
  return [
    draft({
      id: 'mark',
      title: 'Label every part and mark its mates',
      lines: [lead],
      work: [{ kind: 'machining', noun: 'mark', makes: instanceIds(parts), lines: parts.map(markLine) }],
      tools: ['pencil'],
      child: 'does with an adult',
      after: ['crosscut', 'panels'],
    }),
  ];
}
