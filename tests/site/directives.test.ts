import { describe, expect, test } from 'vitest';
import { renderProse, type Stretch } from '../../src/site/prose/render.ts';

const ask = {
  value: (name: string) => (name === 'side' ? { mm: '170 mm', in: '6 11/16 in' } : null),
  steps: new Set(['rout', 'sand-hands']),
};

function wordsOf(stretches: readonly Stretch[]): string {
  return stretches.map((stretch) => (stretch.kind === 'words' ? stretch.html : '')).join('\n');
}

async function rendered(body: string): Promise<string> {
  return wordsOf(await renderProse(body, ask));
}

describe('text with colons', () => {
  test.each(['1:87', '12:30', '1:N', 'at 7:pm sharp', 'scale:N', 'a :ratio[of 3] b', 'note: so', 'x :value b'])(
    '%s stays as typed',
    async (typed) => {
      if (typed === 'x :value b')
        await expect(renderProse(typed, ask)).rejects.toThrow("nothing in this notebook is called ''");
      else expect(await rendered(`Built ${typed} here.`)).toBe(`<p>Built ${typed} here.</p>`);
    },
  );

  test('quotes of feet and inches are not made curly', async () => {
    expect(await rendered(`A board of 2' 6" -- no more...`)).toBe(`<p>A board of 2' 6" -- no more...</p>`);
  });
});

describe('values', () => {
  test('are written in both units', async () => {
    expect(await rendered('The sides are :value[side] tall.')).toBe(
      '<p>The sides are <span class="length"><span class="mm">170 mm</span><span class="in">6 11/16 in</span></span> tall.</p>',
    );
  });

  test('that the model does not know stop the build, with their line', async () => {
    await expect(renderProse('One.\n\nTwo :value[sdie].', ask)).rejects.toThrow(
      "line 3: nothing in this notebook is called 'sdie'",
    );
  });
});

describe('blocks', () => {
  test('stand where the author put them', async () => {
    const stretches = await renderProse('Before.\n\n::drawing{of=plan}\n\nAfter.', ask);
    expect(stretches.map((stretch) => stretch.kind)).toEqual(['words', 'block', 'words']);
    expect(stretches[1]).toEqual({ kind: 'block', name: 'drawing', attributes: { of: 'plan' } });
  });

  test('of an unknown name stop the build', async () => {
    await expect(renderProse('::drawings{of=plan}', ask)).rejects.toThrow("no block is called 'drawings'");
  });

  test('a photo keeps its words', async () => {
    expect(await renderProse('::photo[the wall]{file=wall.jpg}', ask)).toEqual([
      { kind: 'photo', file: 'wall.jpg', alt: 'the wall' },
    ]);
  });

  test('a photo in the middle of a paragraph stands between its halves', async () => {
    const stretches = await renderProse('One ![the wall](photos/wall.jpg) two.', ask);
    expect(stretches.map((stretch) => stretch.kind)).toEqual(['words', 'photo', 'words']);
  });

  test('a note set apart keeps its title', async () => {
    const html = await rendered(':::note[Mind the cat]\nIt sits on the deck.\n:::');
    expect(html.replaceAll('\n', '')).toBe(
      '<div class="set-apart"><p><strong>Mind the cat</strong></p><p>It sits on the deck.</p></div>',
    );
  });
});

describe('steps', () => {
  test('take the words below their heading, until the next heading as high', async () => {
    const stretches = await renderProse('## rout\n\nClamp.\n\n### A jig\n\nDetail.\n\n## Still open\n\nLater.', ask);
    expect(stretches.map((stretch) => stretch.kind)).toEqual(['step', 'words']);
    const [step] = stretches;
    expect(step?.kind === 'step' && wordsOf(step.stretches)).toContain('Detail.');
    expect(wordsOf(stretches.slice(1))).toContain('Later.');
  });

  test("end where a list of the chapter's begins, but keep their drawing", async () => {
    const [step, list] = await renderProse('## rout\n\n::drawing{of=plan}\n\n::parts', ask);
    expect(step?.kind === 'step' && step.stretches.map((stretch) => stretch.kind)).toEqual(['block']);
    expect(list).toEqual({ kind: 'block', name: 'parts', attributes: {} });
  });

  test('a heading that names no step stays a heading', async () => {
    expect(await rendered('## routing')).toBe('<h2 id="routing">routing</h2>');
  });
});
