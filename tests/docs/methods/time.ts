import * as stats from "@/lib/stats";
import { storedAnswers } from "../../external/r-scripts";
import { type CheckRecord, check, checksOf, numbers } from "../../external/stat-checks";
import { type Comparison, type Fields, pick, withAnswer, withCheck } from "./comparison";

const inputOf = (id: string) => (storedAnswers("time").answers[id] as { input: CheckRecord }).input;
const expectedOf = (id: string) => (storedAnswers("time").answers[id] as { expected: CheckRecord }).expected;
const column = (id: string, name: string) => (inputOf(id)[name] as readonly (number | null)[]).map(Number);
const withR = (method: string, id: string, ours: Fields) => withAnswer(method, "time", id, ours, "expected");
const rowsOf = (id: string, time: string, event = "status") => ({
  times: column(id, time),
  event: column(id, event),
  patient: column(id, "id"),
});
const design = (id: string, names: readonly string[]) =>
  column(id, names[0] as string).map((_, i) => names.map((name) => column(id, name)[i] as number));

type Curve = ReturnType<typeof stats.kaplanMeier>;

/** The curve at the times that R's answer lists, under R's names. */
function atTimes({ curve }: Curve, times: readonly number[], names: Readonly<Record<string, keyof Curve["curve"]>>): Fields {
  const places = times.map((time) => curve.time.indexOf(time));
  return Object.fromEntries(Object.entries(names).map(([theirs, own]) => [theirs, places.map((place) => curve[own][place])]));
}

function freireich(): Comparison[] {
  const id = "km-freireich-6mp-loglog";
  const rows = { times: numbers(check(id), "time"), event: numbers(check(id), "event") };
  const [double, plain, log] = (["log-log", "plain", "log"] as const).map((limits) => stats.kaplanMeier({ ...rows, limits })) as [
    Curve,
    Curve,
    Curve,
  ];
  const times = check(id).expected.time as readonly number[];
  return [
    ...withCheck(
      "kaplan-meier",
      "km-freireich-6mp",
      atTimes(log, times, { n_risk: "atRisk", surv: "survival", se: "se", lower: "lower", upper: "upper" }),
    ),
    ...withCheck(
      "kaplan-meier",
      id,
      atTimes(double, times, { surv: "survival", se_greenwood: "se", loglog_lower: "lower", loglog_upper: "upper" }),
    ),
    ...withCheck("kaplan-meier", id, atTimes(plain, times, { plain_lower: "lower", plain_upper: "upper" })),
    ...withCheck("kaplan-meier", id, pick(double, { median: "estimate", median_loglog_lower: "lower", median_loglog_upper: "upper" })),
    ...withCheck("kaplan-meier", id, { median_log_lower: log.lower }),
  ];
}

/** One curve a group, and a field of each side by side. */
function byGroup(id: string, group: string, labels: readonly (string | number)[], options: { tau?: number; limits?: "log" }) {
  const of = check(id).input[group] as readonly (string | number)[];
  return labels.map((label) => {
    const only = (name: string) => numbers(check(id), name).filter((_, row) => of[row] === label);
    return stats.kaplanMeier({ times: only("time"), event: only("event"), ...options });
  });
}

function groups(): Comparison[] {
  const lung = byGroup("km-lung-sex", "sex", [1, 2], { limits: "log" });
  const ovarian = byGroup("rmst-ovarian", "group", [1, 2], { tau: 730 });
  const arms = byGroup("rmst-freireich", "arm", ["6-MP", "placebo"], { tau: 20 });
  const each = (curves: readonly Curve[], names: Readonly<Record<string, keyof Curve>>) =>
    Object.fromEntries(Object.entries(names).map(([theirs, own]) => [theirs, curves.map((curve) => curve[own])]));
  const restricted = (curves: readonly Curve[]) => ({
    rmst: curves.map((one) => one.restrictedMean?.estimate),
    se: curves.map((one) => one.restrictedMean?.se),
  });
  const rows = { times: numbers(check("rmst-freireich"), "time"), event: numbers(check("rmst-freireich"), "event") };
  const difference = stats.restrictedMeanDifference({ ...rows, group: check("rmst-freireich").input.arm as string[], tau: 20 });
  return [
    ...withCheck(
      "kaplan-meier",
      "km-lung-sex",
      each(lung, { n: "n", events: "events", median: "estimate", lower: "lower", upper: "upper" }),
    ),
    ...withCheck("kaplan-meier", "rmst-ovarian", { ...each(ovarian, { n: "n", events: "events" }), ...restricted(ovarian) }),
    ...withCheck("kaplan-meier", "rmst-freireich", { ...each(arms, { median: "estimate" }), ...restricted(arms) }),
    ...withCheck("restricted-mean-difference", "rmst-freireich", {
      difference: difference.estimate,
      difference_se: difference.se,
    }),
  ];
}

function edges(): Comparison[] {
  return checksOf("edge-km").flatMap(({ id, expected }) => {
    const ours = stats.kaplanMeier({ times: numbers(check(id), "time"), event: numbers(check(id), "event") });
    const { time: steps, survival, atRisk } = ours.curve;
    const at = (time: number) => steps.indexOf(time);
    const tied = { surv_at_4: survival[at(4)], n_risk_at_4: atRisk[at(4)], surv_at_6: survival[at(6)] };
    const held: Fields = { median: ours.estimate, events: ours.events, surv: survival, ...tied };
    return withCheck("kaplan-meier", id, Object.fromEntries(Object.entries(held).filter(([field]) => field in expected)));
  });
}

function clustered(): Comparison[] {
  const names = { atRisk: "atRisk", survival: "survival", se: "se", lower: "lower", upper: "upper" } as const;
  const medians = { median: "estimate", medianLower: "lower", medianUpper: "upper" };
  const curve = (id: string, ours: Curve, method = "kaplan-meier") =>
    withR(method, id, { ...atTimes(ours, expectedOf(id).time as number[], names), ...pick(ours, medians) });
  const heart = { ...rowsOf("km-heart-entry", "stop", "event"), entry: column("km-heart-entry", "start") };
  const kidney = stats.kaplanMeier({ ...rowsOf("rmst-kidney", "time"), tau: expectedOf("rmst-kidney").tau as number });
  const retinopathy = stats.restrictedMeanDifference({
    ...rowsOf("rmst-difference-retinopathy", "futime"),
    group: column("rmst-difference-retinopathy", "trt"),
    tau: expectedOf("rmst-difference-retinopathy").tau as number,
  });
  return [
    ...(["log-log", "log", "plain"] as const).flatMap((limits) =>
      curve(`km-kidney-${limits}`, stats.kaplanMeier({ ...rowsOf(`km-kidney-${limits}`, "time"), limits })),
    ),
    ...curve("km-heart-entry", stats.kaplanMeier(heart)),
    ...withR("kaplan-meier", "rmst-kidney", pick(kidney.restrictedMean as object, { estimate: "estimate", se: "se" })),
    ...withR("restricted-mean-difference", "rmst-difference-retinopathy", pick(retinopathy, { estimate: "estimate", se: "se" })),
  ];
}

function followUp(): Comparison[] {
  const id = "reverse-km-lung";
  const event = column(id, "status").map((status) => (status > 1 ? 1 : 0));
  const ours = stats.reverseKaplanMeier({ times: column(id, "time"), event });
  return withR("reverse-kaplan-meier", id, pick(ours, { median: "estimate", medianLower: "lower", medianUpper: "upper" }));
}

function ranked(): Comparison[] {
  const freireichRows = check("logrank-freireich");
  const two = stats.logRank({
    times: numbers(freireichRows, "time"),
    event: numbers(freireichRows, "event"),
    group: freireichRows.input.arm as string[],
  });
  const ties = check("logrank-3groups-ties");
  const three = stats.logRank({ times: numbers(ties, "time"), event: numbers(ties, "event"), group: numbers(ties, "group") });
  const names = { observed: "observed", expected: "expected", chisq: "statistic", p: "p" };
  const robust = [
    ["logrank-kidney-sex", "time", "sex"],
    ["logrank-kidney-disease", "time", "disease"],
    ["logrank-retinopathy", "futime", "trt"],
  ] as const;
  return [
    ...withCheck("log-rank", "logrank-freireich", pick(two, names)),
    ...withCheck("log-rank", "logrank-3groups-ties", pick(three, { ...names, df: "df" })),
    ...robust.flatMap(([id, time, group]) => {
      const ours = stats.logRank({ ...rowsOf(id, time), group: inputOf(id)[group] as (string | number)[] });
      return withR("log-rank", id, { statistic: ours.plain.statistic, robust: ours.statistic });
    }),
  ];
}

/** A column of an incidence at some times: its last value not later. */
function incidenceAt({ time, causes, free }: ReturnType<typeof stats.aalenJohansen>, times: readonly number[]) {
  const places = times.map((at) => time.findLastIndex((step) => step <= at));
  const of = (values: readonly (number | null)[] | undefined) => places.map((place) => values?.[place]);
  return {
    first: of(causes[0]?.incidence),
    second: of(causes[1]?.incidence),
    se1: of(causes[0]?.se),
    se2: of(causes[1]?.se),
    lower: of(causes[0]?.lower),
    upper: of(causes[0]?.upper),
    free: of(free),
  };
}

function competing(): Comparison[] {
  const plain = ["aj-melanoma", "aj-fixture-ties"].flatMap((id) => {
    const ours = stats.aalenJohansen({ times: numbers(check(id), "time"), event: numbers(check(id), "status") });
    const { first, second, free, se1, se2 } = incidenceAt(ours, check(id).expected.times as number[]);
    return withCheck("aalen-johansen", id, {
      cif_event1: first,
      cif_event2: second,
      event_free: free,
      survival_se_event1: se1,
      survival_se_event2: se2,
    });
  });
  const byPatient = (["log-log", "log"] as const).flatMap((limits) => {
    const id = limits === "log" ? "aj-bladder-gaps-log" : "aj-bladder-gaps";
    const { first, second, free, se1, se2, lower, upper } = incidenceAt(
      stats.aalenJohansen({ ...rowsOf(id, "time"), limits }),
      expectedOf(id).at as number[],
    );
    return withR("aalen-johansen", id, { incidence1: first, incidence2: second, free, se1, se2, lower1: lower, upper1: upper });
  });
  const gray = ["gray-bladder-first", "gray-mgus"].flatMap((id) => {
    const ask = (cause: number) =>
      stats.grayTest({ times: column(id, "time"), event: column(id, "status"), group: inputOf(id).group as string[], cause });
    return withR("gray-test", id, {
      ...pick(ask(1), { statistic1: "statistic", p1: "p", df: "df" }),
      ...pick(ask(2), { statistic2: "statistic", p2: "p" }),
    });
  });
  const fixture = check("aj-fixture-ties");
  const tied = (cause: number) => {
    const { statistic, p, df } = stats.grayTest({
      times: numbers(fixture, "time"),
      event: numbers(fixture, "status"),
      group: numbers(fixture, "group"),
      cause,
    });
    return [statistic, p, df];
  };
  return [...plain, ...byPatient, ...gray, ...withCheck("gray-test", "aj-fixture-ties", { gray_event1: tied(1), gray_event2: tied(2) })];
}

/** R's survfit stops once nothing moves by 5e-5, so its curve is that near ours and no nearer. */
function seenBetween(): Comparison[] {
  const { after, by } = inputOf("turnbull-kidney") as { after: number[]; by: (number | null)[] };
  const { curve } = stats.turnbull({ after, by });
  const share = (time: number) => curve.survival[curve.to.findLastIndex((to) => to <= time)] ?? 1;
  return withR("turnbull", "turnbull-kidney", { survival: (expectedOf("turnbull-kidney").time as number[]).map(share) });
}

const listed = (rows: readonly object[], field: string) => rows.map((row) => (row as Fields)[field]);

function models(): Comparison[] {
  const kidney = design("time-model-kidney", ["age", "sex"]).map(([age, sex]) => [age as number, (sex as number) - 1]);
  const seen = "time-model-kidney-interval";
  const spans = { after: column(seen, "after"), by: inputOf(seen).by as (number | null)[], patient: column(seen, "id") };
  const lung = {
    times: column("time-model-lung", "time"),
    event: column("time-model-lung", "status").map((status) => status - 1),
    patient: column("time-model-lung", "inst"),
  };
  const times = (id: string, ours: ReturnType<typeof stats.timeModel>) =>
    withR("time-model", id, {
      coefficients: listed(ours.coefficients, "estimate"),
      ...pick(ours, { scale: "scale", logLikelihood: "logLikelihood", covariance: "covariance", median: "estimate", logSe: "logSe" }),
    });
  const hazards = (id: string, ours: ReturnType<typeof stats.cox>) =>
    withR("cox", id, {
      coefficients: listed(ours.coefficients, "estimate"),
      naive: listed(ours.coefficients, "modelSe"),
      se: listed(ours.coefficients, "se"),
      ...pick(ours, { logLikelihood: "logLikelihood" }),
    });
  const bladder = {
    ...rowsOf("cox-bladder-efron", "time"),
    event: column("cox-bladder-efron", "status").map((status) => (status === 1 ? 1 : 0)),
  };
  const arms = check("logrank-freireich");
  const printed = stats.cox({
    times: numbers(arms, "time"),
    event: numbers(arms, "event"),
    design: (arms.input.arm as string[]).map((arm) => [arm === "placebo" ? 1 : 0]),
  });
  return [
    ...times("time-model-kidney", stats.timeModel({ ...rowsOf("time-model-kidney", "time"), design: kidney })),
    ...times(seen, stats.timeModel({ ...spans, design: kidney })),
    ...times("time-model-lung", stats.timeModel({ ...lung, design: design("time-model-lung", ["age", "sex", "ph.ecog"]) })),
    ...(["efron", "breslow"] as const).flatMap((ties) =>
      hazards(
        `cox-kidney-${ties}`,
        stats.cox({ ...rowsOf(`cox-kidney-${ties}`, "time"), design: design(`cox-kidney-${ties}`, ["age", "sex"]), ties }),
      ),
    ),
    ...hazards("cox-bladder-efron", stats.cox({ ...bladder, design: design("cox-bladder-efron", ["number", "size"]) })),
    ...withCheck("cox", "cox-freireich", { coef_efron: printed.coefficients[0]?.estimate, se_efron: printed.coefficients[0]?.modelSe }),
  ];
}

export const time: readonly Comparison[] = [
  ...freireich(),
  ...groups(),
  ...edges(),
  ...clustered(),
  ...followUp(),
  ...ranked(),
  ...competing(),
  ...seenBetween(),
  ...models(),
];
