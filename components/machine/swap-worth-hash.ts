/** After # in the address of a machine's form: the field for what a swap is worth is asked for. */
export const SWAP_WORTH = 'swap-worth';
