declare module '@mapbox/shelf-pack' {
  /** A bin with shelves; what the bench uses of it. */
  class ShelfPack {
    constructor(width: number, height: number);
    /** null when there is no room left */
    packOne(width: number, height: number): { readonly x: number; readonly y: number } | null;
  }

  // biome-ignore lint/style/noDefaultExport: so the library has it
  export default ShelfPack;
}
