import { describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../../src/core/steps/cautions.ts';
import { toolNotForChild } from '../../../src/core/steps/child-tools.ts';
import { toolMeant, toolNamed } from '../../../src/core/steps/tool-names.ts';
import { planned, stepNamed } from './demo.ts';

describe('a tool', () => {
  test('is the same however it is spaced, joined or capitalised', () => {
    for (const typed of ['table saw', 'tablesaw', 'Table-Saw', 'TABLE_SAW', 'table-saw'])
      expect(toolNamed(typed)).toBe('table-saw');
    expect(toolNamed('Soldering Iron')).toBe('soldering-iron');
    expect(toolNamed('dremel-like thing')).toBe('dremel-like thing');
  });

  test('that is misspelt is told with what was meant; other tools are not guessed at', () => {
    expect(toolMeant('calliper')).toBe('caliper');
    expect(toolMeant('tabel saw')).toBe('table-saw');
    expect(toolMeant('soldring-iron')).toBe('soldering-iron');
    for (const fine of ['table saw', 'hand saw', 'bench-hook', 'bucket', 'awl', 'ladder'])
      expect(toolMeant(fine)).toBeNull();
  });

  test('keeps its cautions and keeps a child from it under every spelling of every word that calls for one', () => {
    const spellings = (word: string) => [word.replaceAll('-', ' '), word.replaceAll('-', ''), word.toUpperCase()];
    for (const word of CAUTIONS.flatMap(({ words }) => words))
      for (const typed of spellings(word)) expect(toolNamed(typed)).toBe(word);
    const made = planned([{ id: 'cut', do: 'Cut', with: ['Table Saw'], child: 'does alone' }]);
    expect(stepNamed(made, 'benchwork.cut').cautions.map(({ id }) => id)).toContain('table-saw');
    expect(made.findings.map(({ rule }) => rule)).toEqual(['child-at-machine']);
    const slip = planned([{ id: 'cut', do: 'Cut', with: ['tabel-saw'] }]);
    expect(slip.findings).toMatchObject([{ rule: 'tool-misspelt', level: 'care', where: 'benchwork.cut' }]);
  });

  test('that burns or cuts is for a child only beside an adult', () => {
    expect(toolNotForChild('does alone', ['soldering-iron'])).toEqual({
      tool: 'soldering-iron',
      most: 'does with an adult',
    });
    expect(toolNotForChild('does with an adult', ['soldering-iron'])).toBeNull();
  });
});
