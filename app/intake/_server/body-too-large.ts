/** A commit above the limit. What had come of it was thrown away. */
export class BodyTooLarge extends Error {
  override readonly name = "BodyTooLarge";
}
