import type { Metadata } from "next";
import { tellFollowUp } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { Sentence } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { openPlace } from "../_place/open-place";
import { PlacePage } from "../_place/place-page";
import { SplitWord } from "../_place/split-word";
import { placeOf } from "../_places/places";

export const metadata: Metadata = { title: "Follow-up" };

export default async function FollowUp({ searchParams }: PageAsked) {
  const opened = await openPlace(
    "follow-up",
    searchParams,
    {},
    {
      wouldStand: "how many were seen at 3, 6, 12 and 24 months, how many were due and not seen, and how complete follow-up is",
    },
  );
  if ("page" in opened) return opened.page;
  const { where, by, asOf } = opened.question;
  const told = await tellFollowUp(await registry(), { where, by, asOf });
  const sentence = (
    <Sentence action={placeOf("follow-up").path}>
      How many of <CohortWords where={where} by={by} place="follow-up" /> were seen at each window, split by <SplitWord by={by} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} sentence={sentence} />;
}
