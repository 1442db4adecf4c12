/** Check codes as a person reads them off a card: capitals or not, with or without a space, and misread letters. */
const ALPHABET = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
const POLYNOMIAL = 0b100101;
const WEIGHTS = [2, 4, 8, 16];

/** @param {string} code @returns {string} */
export function plainCode(code) {
  return code.toUpperCase().replace(/[^0-9A-Z]/g, "");
}

/** Whether a text can be a code at all; one wrong letter, or two swapped, cannot. @param {string} code @returns {boolean} */
export function isCode(code) {
  const values = [...plainCode(code)].map((letter) => ALPHABET.indexOf(letter));
  return values.length === 5 && !values.includes(-1) && WEIGHTS.reduce((sum, weight, place) => sum ^ times(values[place], weight), 0) === values[4];
}

/** Product in the field of 32 elements. @param {number} one @param {number} other @returns {number} */
function times(one, other) {
  let product = 0;
  for (; other; other >>= 1) {
    if (other & 1) product ^= one;
    one <<= 1;
    if (one & 32) one ^= POLYNOMIAL;
  }
  return product;
}
