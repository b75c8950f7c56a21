/** Most unknown genes that are weighed for one tree by what was seen of it: 3⁹ genotypes. */
export const MAX_WEIGHED_GENES = 9;
