import type { Metadata } from "next";
import { clocksAsOf, cohortGroups, type MeasureEntry, measureList } from "@/lib/answers";
import { canonicalWhere, describeWhere, fieldsNamed, treeOf } from "@/lib/cohorts";
import { tellFlow } from "@/lib/reports";
import { registry } from "../_data/registry";
import { standing } from "../_data/standing";
import type { PageAsked } from "../_page/asked";
import { NoData } from "../outcomes/_parts/no-data";
import { NotUnderstood } from "../outcomes/_parts/not-understood";
import { Builder } from "./_client/builder";
import { offeredFields } from "./_fields";
import { Beginnings } from "./_parts/beginnings";
import { Counts } from "./_parts/counts";
import { Flow } from "./_parts/flow";
import { Onward } from "./_parts/onward";
import { Saved } from "./_parts/saved";
import { Split } from "./_parts/split";
import { type CohortQuestion, readCohort } from "./_question";

export const metadata: Metadata = { title: "Cohorts" };

const wouldStand = "the cases that you mean: conditions as sentences, with how many segments and patients meet them";

export default async function Cohorts({ searchParams }: PageAsked) {
  const { batch, segments } = await standing();
  const asked = await searchParams;
  const list = measureList(await clocksAsOf(await registry()));
  const read = readCohort(asked, batch, list);
  if ("troubles" in read) return <NotUnderstood troubles={read.troubles} afresh="/cohorts" />;
  if (segments === 0 && read.question.asOf === null) return <NoData wouldStand={wouldStand} />;
  return <Cohort question={read.question} list={list} unnamed={asked.unnamed !== undefined} />;
}

type Props = { readonly question: CohortQuestion; readonly list: readonly MeasureEntry[]; readonly unnamed: boolean };

async function Cohort({ question, list, unnamed }: Props) {
  const { where, by, measure } = question;
  const from = await registry();
  const asOf = question.asOf === null ? {} : { asOf: question.asOf };
  const [told, groups, cohorts, { units, indices }] = await Promise.all([
    tellFlow(from, { where, measure, ...asOf }),
    by.length === 0 ? [] : cohortGroups(from, { where, by, ...asOf }),
    from.cohorts(),
    from.settings(),
  ]);
  return (
    <main className="sheet cohorts" id="page">
      <h1>Which cases do you mean?</h1>
      <div className="not-printed">
        <Builder tree={treeOf(where)} where={canonicalWhere(where)} groups={offeredFields(units, indices, fieldsNamed(where))} />
        <noscript>
          <p>Conditions are built with scripts. Without them a cohort comes by its address, or by its name from the list below.</p>
        </noscript>
      </div>
      <p className="cohort-words">
        <span className="muted">In words: </span>
        <span className="cohort">{describeWhere(where)}</span>
        {question.asOf === null ? "" : `, as of batch ${question.asOf}`}.
      </p>
      <Counts flow={told.answer} />
      {Object.keys(where).length === 0 ? <Beginnings /> : null}
      <Onward question={question} />
      <Split question={question} groups={groups} />
      <Flow told={told} question={question} list={list} />
      <Saved question={question} cohorts={cohorts} unnamed={unnamed} />
    </main>
  );
}
