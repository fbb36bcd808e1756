import { jsx } from 'astro/jsx-runtime';
import MdxBlock from './MdxBlock.astro';
import MdxPhoto from './MdxPhoto.astro';
import MdxStep from './MdxStep.astro';
import MdxValue from './MdxValue.astro';

function block(name: string) {
  return (props: Readonly<Record<string, unknown>>) => jsx(MdxBlock, { ...props, name });
}

/** What an .mdx chapter may write without importing it: the directives of .md, with capital letters. */
export const MDX_COMPONENTS = {
  CutList: block('cut-list'),
  Drawing: block('drawing'),
  Findings: block('findings'),
  Joints: block('joints'),
  Parts: block('parts'),
  Photo: MdxPhoto,
  Sheets: block('sheets'),
  Step: MdxStep,
  Steps: block('steps'),
  Tools: block('tools'),
  Value: MdxValue,
};
