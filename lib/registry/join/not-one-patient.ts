/** Two numbers that can't be of one patient as they are recorded. Nothing was joined. */
export class NotOnePatient extends Error {
  override readonly name = "NotOnePatient";
  readonly field: "sex" | "line";

  constructor(field: "sex" | "line") {
    super(`join requires two numbers of one ${field === "sex" ? "sex" : "line of days"}, received two that differ in it`);
    this.field = field;
  }
}
