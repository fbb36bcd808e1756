import { jsx } from 'astro/jsx-runtime';
import { BLOCKS } from '../blocks.ts';
import MdxBlock from './MdxBlock.astro';
import MdxPhoto from './MdxPhoto.astro';
import MdxStep from './MdxStep.astro';
import MdxValue from './MdxValue.astro';

function block(name: string) {
  return (props: Readonly<Record<string, unknown>>) => jsx(MdxBlock, { ...props, name });
}

/** What an .mdx chapter may write without importing it: the directives of .md, with capital letters. */
export const MDX_COMPONENTS = {
  ...Object.fromEntries(BLOCKS.map(({ element, name }) => [element, block(name)])),
  Drawing: block('drawing'),
  Photo: MdxPhoto,
  Step: MdxStep,
  Value: MdxValue,
};
