"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { useEffect, useReducer, useRef, useTransition } from "react";
import { canonicalWhere, type GroupNode, whereOf } from "@/lib/cohorts";
import { draftOf, treeOfDraft } from "./draft";
import { edited } from "./edit";
import { Group } from "./group";
import type { FieldGroup } from "./offered";

type Props = {
  readonly tree: GroupNode;
  /** The cohort of the address in its one form. */
  readonly where: string;
  readonly groups: readonly FieldGroup[];
};

/** Typing makes a question of every letter; one that rests is asked. */
const restMs = 350;

/**
 * The sentences of a cohort. Each change makes the address, and the address the counts; the sentences themselves stay as they are written,
 * half typed ones too, unless the address changes by itself (a step back, a link).
 */
export function Builder({ tree, where, groups }: Props) {
  const [draft, dispatch] = useReducer(edited, tree, draftOf);
  const [waiting, start] = useTransition();
  const asked = useSearchParams();
  const router = useRouter();
  const meant = canonicalWhere(whereOf(treeOfDraft(draft)));
  /** Cohorts that were asked for and have not come back as the address yet. */
  const pending = useRef(new Set<string>());
  const shown = useRef(where);

  useEffect(() => {
    if (shown.current === where) return;
    shown.current = where;
    const ours = pending.current.has(where);
    // an older question of ours that comes late is no step back
    if (where === meant) pending.current.clear();
    else if (!ours) dispatch({ edit: "reset", to: draftOf(tree) });
  }, [where, tree, meant]);

  useEffect(() => {
    if (meant === shown.current || pending.current.has(meant)) return;
    const rest = setTimeout(() => {
      pending.current.add(meant);
      start(() => router.push(addressOf(asked, meant), { scroll: false }));
    }, restMs);
    return () => clearTimeout(rest);
  }, [meant, asked, router]);

  return (
    <div className="builder question">
      <Group draft={draft} groups={groups} dispatch={dispatch} depth={0} />
      <p className="only-heard" role="status">
        {waiting ? "Counting…" : ""}
      </p>
      <p className="muted sans" aria-hidden="true">
        {waiting ? "Counting…" : "\u00a0"}
      </p>
    </div>
  );
}

function addressOf(asked: Iterable<[string, string]>, where: string): string {
  const next = new URLSearchParams([...asked].filter(([name]) => !["where", "saved", "taken"].includes(name)));
  if (where !== "{}") next.set("where", where);
  return `/cohorts?${next}`;
}
