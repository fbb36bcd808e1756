import type { GoodsWanted } from '../shopping/line.ts';
import type { Stock } from '../stock/goods.ts';
import type { WiringModel } from '../wiring/wiring.ts';

/** Wire by its stock, slack counted in, a plug wherever the bus crosses from bench to bench, and what is bought by the piece. */
export function wiresWanted(wiring: WiringModel | null, stock: readonly Stock[]): readonly GoodsWanted[] {
  if (wiring === null) return [];
  const wires = wiring.wires.map((wire): GoodsWanted => {
    const name = stock.find(({ id }) => id === wire.stock)?.name ?? wire.stock;
    return { stock: wire.stock, name, unit: 'metre', quantity: wire.length, for: 'wiring', colour: wire.colour };
  });
  const plugs = wiring.connectors.map(
    ({ pins }): GoodsWanted => ({
      ...{ stock: null, name: `Plug and socket of ${pins.length} pins`, unit: 'pair', quantity: 1, for: 'wiring' },
    }),
  );
  const small = wiring.smallParts.map(
    ({ name, quantity }): GoodsWanted => ({ stock: null, name, unit: 'piece', quantity, for: 'wiring' }),
  );
  return [...wires, ...plugs, ...small];
}
