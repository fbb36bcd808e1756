import { describe, expect, test } from 'vitest';
import { renderProse } from '../../src/site/prose/render.ts';
import { linkable } from '../../src/site/prose/safe.ts';

async function rendered(body: string): Promise<string> {
  const stretches = await renderProse(body, { value: () => null, steps: new Set() });
  return stretches.map((stretch) => (stretch.kind === 'words' ? stretch.html : '')).join('');
}

/** Markdown that would run, load or disguise something if it reached a page as written. */
const HOSTILE = [
  '<script>alert(1)</script>',
  'text <img src=x onerror=alert(1)> text',
  '<svg onload=alert(1)><script>alert(1)</script></svg>',
  '<iframe src="https://elsewhere.example"></iframe>',
  '<a href="javascript:alert(1)">x</a>',
  '<style>body{display:none}</style>',
  '<link rel=stylesheet href=https://elsewhere.example/x.css>',
  '<meta http-equiv=refresh content="0;url=https://elsewhere.example">',
  '<base href="https://elsewhere.example/">',
  '<form action="https://elsewhere.example"><input name=q autofocus onfocus=alert(1)></form>',
  '[x](javascript:alert(1))',
  '[x](JaVaScRiPt:alert(1))',
  '[x](java&#10;script:alert(1))',
  '[x](&#1;javascript:alert(1))',
  '[x](<java\tscript:alert(1)>)',
  '[x](data:text/html,<script>alert(1)</script>)',
  '[x](vbscript:msgbox)',
  '<javascript:alert(1)>',
  '[x][1]\n\n[1]: javascript:alert(1)',
  '![x](data:image/svg+xml,<svg/onload=alert(1)>)',
  '![x](https://elsewhere.example/track.png)',
  '![x](//elsewhere.example/track.png)',
  '![x](../../../etc/passwd)',
  '![x][p]\n\n[p]: https://elsewhere.example/track.png',
  'a[^1]\n\n[^1]: <script>alert(1)</script>',
  '| a |\n|---|\n| <b onclick=alert(1)>x</b> |',
  '`<script>` and\n\n    <script>alert(1)</script>',
  '<fb-mark n="0"></fb-mark>',
  '<!-- --><script>alert(1)</script>',
  '<![CDATA[<script>alert(1)</script>]]>',
  '<?php echo 1 ?>',
];

const ELEMENT = /<\/?([a-z][\w-]*)((?:\s+[\w:-]+(?:="[^"]*")?)*)\s*\/?>/gi;
const ALLOWED = new Set(
  'a blockquote br code del div em h2 hr li ol p pre section span strong sup table tbody td th thead tr ul'.split(' '),
);

describe('hostile Markdown', () => {
  test.each(HOSTILE)('%s comes out harmless', async (body) => {
    const html = await rendered(`Before.\n\n${body}\n\nAfter.`);
    expect(html).toContain('After.');
    for (const [, name = '', attributes = ''] of html.matchAll(ELEMENT)) {
      expect(ALLOWED, `<${name}> in ${html}`).toContain(name.toLowerCase());
      expect(attributes).not.toMatch(/\son|style=|src=/i);
      const address = /href="([^"]*)"/.exec(attributes)?.[1];
      if (address !== undefined) expect(address).toMatch(/^(?:https?:|mailto:|\/\/|#|\.{0,2}\/|[\w-]+$)/);
    }
    expect(html.replaceAll(ELEMENT, '')).not.toMatch(/<[a-z!/?]/i);
  });

  test('raw HTML is kept as the text it is', async () => {
    expect(await rendered('<b>bold</b>')).toBe('<p>&#x3C;b>bold&#x3C;/b></p>');
  });
});

describe('links', () => {
  test.each(['https://a.example', 'http://a.example', 'mailto:a@b.example', '../track/', '#steps', 'a/b:c', '?q=a:b'])(
    '%s may be linked',
    (address) => {
      expect(linkable(address)).toBe(true);
    },
  );

  test.each([
    'javascript:x',
    ' javascript:x',
    'java\nscript:x',
    '\u0001javascript:x',
    'data:text/html,x',
    'file:///x',
    'blob:x',
  ])('%j may not', (address) => {
    expect(linkable(address)).toBe(false);
  });
});
