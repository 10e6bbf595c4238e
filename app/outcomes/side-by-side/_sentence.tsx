import { canBeAdjusted, hasMean, type MeasureEntry } from "@/lib/answers";
import { grouped } from "@/lib/charts";
import { type Choice, Sentence, Word } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { fieldChoice } from "../_place/split-word";
import { placeOf } from "../_places/places";
import type { Groups } from "./_groups";
import { covariatesOffered, fieldChoices, measureTitle, outcomesOffered } from "./_offered";
import type { PairQuestion } from "./_question";
import { Tick } from "./_tick";

type Props = { readonly question: PairQuestion; readonly groups: Groups };
type Listed = { readonly list: readonly MeasureEntry[] };

/** The comparison as a sentence, with the outcomes and covariates that were chosen beforehand as ticks beneath it. */
export function PairSentence({ question, groups, list }: Props & Listed) {
  const { where, asOf, between, field, measures, adjust, test, withoutPinSites } = question;
  const tickText = (id: string) => `${measureTitle(id, list)}${between === "groups" && !hasMean(id) ? " (two groups at a time)" : ""}`;
  const asksPins = between !== "groups" && measures.some((id) => id.startsWith("complication"));
  const ids = list.map(({ id }) => id);
  const own = ids.filter((id) => id.startsWith("own-"));
  const scores = ids.filter((id) => id.startsWith("score-change."));
  return (
    <Sentence action={placeOf("side-by-side").path}>
      How did <GroupWords {...{ question, groups }} /> in <CohortWords where={where} by={[field]} place="side-by-side" />, compared as{" "}
      <Word name="between" label="Compared as" value={between} choices={ways} comma={between === "cohorts"} />
      {between !== "cohorts" ? (
        <>
          {" "}
          <Word name="field" label="Field" value={field} choices={withOwn(fieldChoices(), field)} comma />
        </>
      ) : null}{" "}
      with p values <Word name="test" label="p values" value={test ? "yes" : "no"} choices={tests} comma={asksPins} />
      {asksPins ? (
        <>
          {" "}
          pin-site infections{" "}
          <Word name="pins" label="Pin-site infections" value={withoutPinSites ? "left-out" : "counted"} choices={pinSites} />
        </>
      ) : null}
      <KeptWords where={where} asOf={asOf} />?
      <fieldset className="ticks sans">
        <legend>Outcomes of the family</legend>
        {[...new Set([...outcomesOffered, ...scores, ...own, ...measures])].map((id) => (
          <Tick key={id} name="measure" value={id} ticked={measures.includes(id)} text={tickText(id)} />
        ))}
      </fieldset>
      {between !== "groups" && measures.some((id) => canBeAdjusted(id) || own.includes(id)) ? (
        <fieldset className="ticks sans">
          <legend>Adjusted for, chosen beforehand</legend>
          {[...new Set([...covariatesOffered, ...adjust])]
            .filter((one) => between === "cohorts" || one !== field)
            .map((one) => (
              <Tick key={one} name="adjust" value={one} ticked={adjust.includes(one)} text={fieldChoice(one).text} />
            ))}
        </fieldset>
      ) : null}
    </Sentence>
  );
}

const ways: readonly Choice[] = [
  { value: "field", text: "two groups of" },
  { value: "groups", text: "all groups of" },
  { value: "cohorts", text: "two saved cohorts" },
];
const pinSites: readonly Choice[] = [
  { value: "counted", text: "counted" },
  { value: "left-out", text: "left out" },
];
const tests: readonly Choice[] = [
  { value: "no", text: "left out" },
  { value: "yes", text: "shown, by Holm’s rule" },
];

function withOwn(choices: readonly Choice[], field: string): readonly Choice[] {
  return choices.some(({ value }) => value === field) ? choices : [...choices, fieldChoice(field)];
}

function GroupWords({ question, groups }: Props) {
  const { between, field } = question;
  if (between === "groups") return <>{groups.values.length === 1 ? "the only group does" : `all ${groups.values.length} groups do`}</>;
  const choices =
    between === "cohorts"
      ? groups.saved.map(({ name }) => ({ value: name, text: name }))
      : groups.occurring.map(({ key, label, segments }) => ({
          value: String(key[field] ?? null),
          text: `${label} (${grouped(segments)})`,
        }));
  if (choices.length < 2) return <>two groups do</>;
  const [first, second] = between === "cohorts" ? (["first", "second"] as const) : (["a", "b"] as const);
  return (
    <>
      <Word name={first} label="First group" value={groups.a} choices={choices} /> do beside{" "}
      <Word name={second} label="Second group" value={groups.b} choices={choices} />
    </>
  );
}
