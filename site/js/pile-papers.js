// The question papers that were made on this device, as pycore is told of them, and the way of drawn answers into the
// answers to each.

import * as papers from "./kept-papers.js";

/** @import { PileAsk, PileRow } from "../types/photos.js" */

/** What pycore is told of them. */
export const told = () => papers.made().map(({ form, roll }) => ({ form, roll }));

/**
 * Put the drawn answers of accepted rows among the answers to their papers; gives what is said of it, "" for nothing.
 * @param {PileAsk} ask @param {PileRow[]} rows
 */
export async function put(ask, rows) {
  const given = papers.made().map(({ form, roll, code }) => {
    const key = papers.keyOf(code, form.group);
    return { form, roll, key, text: papers.answers(key).text };
  });
  const reply = await ask({ move: "paper", rows, papers: given.map(({ form, roll, text }) => ({ form, roll, text })) });
  if (!reply.ok) return "";
  const said = [];
  for (const { number, text, told: sentence } of reply.papers) {
    const { key } = given[number];
    papers.keepAnswers(key, { ...papers.answers(key), text });
    said.push(sentence);
  }
  return said.join(" ");
}
