declare module '@mapbox/shelf-pack' {
  /** A bin with shelves; what the bench uses of it. */
  export default class ShelfPack {
    constructor(width: number, height: number);
    /** null when there is no room left */
    packOne(width: number, height: number): { readonly x: number; readonly y: number } | null;
  }
}
