import type { Metadata } from "next";
import type { ReactNode } from "react";
import { clocksAsOf, hasMean, isKnownLater, measureList, NotCompared, scoreMeasures } from "@/lib/answers";
import { conditionField } from "@/lib/cohorts";
import { tellSeveralGroups, tellSideBySide } from "@/lib/reports";
import { registry } from "../../_data/registry";
import { standing } from "../../_data/standing";
import type { PageAsked } from "../../_page/asked";
import { NoData } from "../_parts/no-data";
import { NotUnderstood } from "../_parts/not-understood";
import { cohortsPath } from "../_place/cohorts-path";
import { PlacePage } from "../_place/place-page";
import { placeOf } from "../_places/places";
import { type Groups, groupsOf } from "./_groups";
import { type PairQuestion, readPair } from "./_question";
import { PairSentence } from "./_sentence";

export const metadata: Metadata = { title: "Side by side" };

const mostGroups = 12;
const wouldStand = "two groups side by side: how alike they were to begin with, then each outcome’s difference with its interval";

export default async function SideBySide({ searchParams }: PageAsked) {
  const { batch, segments } = await standing();
  const { scores } = await (await registry()).settings();
  const list = [...measureList(await clocksAsOf(await registry())), ...scoreMeasures(scores.map(({ code }) => code))];
  const read = readPair(await searchParams, batch, list);
  if ("troubles" in read) return <NotUnderstood troubles={read.troubles} afresh={placeOf("side-by-side").path} />;
  if (segments === 0 && read.question.asOf === null) return <NoData wouldStand={wouldStand} />;
  const { question } = read;
  const groups = await groupsOf(await registry(), question);
  const sentence = <PairSentence question={question} groups={groups} list={list} />;
  if (question.between === "groups") return <SeveralGroups question={question} groups={groups} sentence={sentence} />;
  if (groups.between === null) return <NotTwo question={question} groups={groups} sentence={sentence} />;
  const told = await orRefused(toldOfTwo(question, groups.between));
  if ("refused" in told) return <NotTwo question={question} groups={groups} sentence={sentence} refused={told.refused} />;
  return (
    <PlacePage told={told} where={question.where} sentence={sentence}>
      <Remarks question={question} groups={groups} />
    </PlacePage>
  );
}

async function toldOfTwo(question: PairQuestion, between: NonNullable<Groups["between"]>) {
  const { measures, adjust, test, withoutPinSites, asOf } = question;
  const covariates = adjust.map((field) => ({ field, label: conditionField(field)?.label ?? field }));
  return tellSideBySide(await registry(), { between, measures, adjust: covariates, test, scheme: null, withoutPinSites, asOf });
}

const refusals: Readonly<Record<NotCompared["because"], string>> = {
  "in-both":
    "These two cohorts share segments, and a bone can’t be compared with itself. Give one of them a condition that leaves the shared ones out.",
  score: "Scores are compared one by one: tick the score by its name.",
};

/** A comparison that can't be made is refused in words; anything else is a fault. */
async function orRefused<T>(telling: Promise<T>): Promise<T | { readonly refused: string }> {
  try {
    return await telling;
  } catch (error) {
    if (error instanceof NotCompared) return { refused: refusals[error.because] };
    throw error;
  }
}

type SeveralProps = { readonly question: PairQuestion; readonly groups: Groups; readonly sentence: ReactNode };

/** All groups of a field at once, by the outcomes ticked that have a mean. */
async function SeveralGroups({ question, groups, sentence }: SeveralProps) {
  const { where, field, test, asOf } = question;
  const { values } = groups;
  const measures = question.measures.filter(hasMean);
  const label = (conditionField(field)?.label ?? field).toLowerCase();
  const refused =
    values.length < 3
      ? `All groups at once need three or more; in this cohort ${label} has ${values.length}.`
      : values.length > mostGroups
        ? `In this cohort ${label} has ${values.length} groups; at most ${mostGroups} can be read side by side. Narrow the cohort, or take two groups.`
        : measures.length === 0
          ? "None of the outcomes ticked has a mean: shares, rates and classes are compared two groups at a time."
          : null;
  if (refused !== null) return <NotTwo question={question} groups={groups} sentence={sentence} refused={refused} />;
  const told = await orRefused(tellSeveralGroups(await registry(), { field, values, where, measures, test, asOf }));
  if ("refused" in told) return <NotTwo question={question} groups={groups} sentence={sentence} refused={told.refused} />;
  return (
    <PlacePage told={told} where={where} sentence={sentence}>
      <Remarks question={question} groups={groups} />
    </PlacePage>
  );
}

function Remarks({ question, groups }: { readonly question: PairQuestion; readonly groups: Groups }) {
  const { between, field } = question;
  const label = conditionField(field)?.label ?? field;
  return (
    <>
      {groups.replaced && between !== "groups" ? (
        <p>A group named in the address doesn’t occur here; the largest stands in its place.</p>
      ) : null}
      {between === "groups" && question.measures.some((id) => !hasMean(id)) ? (
        <p>Outcomes that are shares, rates or classes are compared two groups at a time, and are left out here.</p>
      ) : null}
      {between !== "cohorts" && isKnownLater(field) ? (
        <p className="said warm">
          {label} is known only after surgery: bones came into these groups by what happened to them, so a difference describes and explains
          nothing.
        </p>
      ) : null}
    </>
  );
}

type NotTwoProps = { readonly question: PairQuestion; readonly groups: Groups; readonly sentence: ReactNode; readonly refused?: string };

function NotTwo({ question, groups, sentence, refused }: NotTwoProps) {
  const { between, where, field } = question;
  const why =
    between === "cohorts"
      ? `Two saved cohorts are needed, and ${groups.saved.length === 0 ? "none is" : `${groups.saved.length} ${groups.saved.length === 1 ? "is" : "are"}`} saved.`
      : `In this cohort there are not two groups of ${(conditionField(field)?.label ?? field).toLowerCase()} to compare.`;
  return (
    <main className="sheet" id="page">
      <h1 className="only-heard">Outcomes: side by side</h1>
      {sentence}
      <p className="answer">{refused ?? why}</p>
      <p>
        <a href={cohortsPath(where, between === "cohorts" ? [] : [field], "side-by-side")}>Build and save cohorts</a>
      </p>
    </main>
  );
}
