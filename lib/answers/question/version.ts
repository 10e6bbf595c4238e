/** Version of the numbers: raised with the package's version whenever an answer can change. */
export const version = "0.1.0";
