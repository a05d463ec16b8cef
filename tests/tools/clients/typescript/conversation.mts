// A conversation with a running service, through a client whose types are made from the API document alone.
import assert from "node:assert/strict";
import createClient from "openapi-fetch";
import type { components, paths } from "./schema.mjs";

type Problem = components["schemas"]["Problem"];
type BulkLine = components["schemas"]["BulkPrediction"] | components["schemas"]["BulkEnd"];

const address = process.argv[2];
assert.ok(address, "The address of the service is needed.");
const client = createClient<paths>({
  baseUrl: address,
  querySerializer: { object: { style: "form", explode: true } }, // As the document says of fields.
});

function right<T>(answer: { data?: T; error?: unknown; response: Response }): T {
  assert.ok(answer.data !== undefined, `${answer.response.status}: ${JSON.stringify(answer.error)}`);
  return answer.data;
}

// Machines, and one of them.
const machines = right(await client.GET("/v1/machines", { params: { query: { driveFamily: "armOnRoller" } } }));
const listed = machines.items.find((machine) => machine.id === "valley-two-seater");
assert.ok(listed);
const machine = right(await client.GET("/v1/machines/{id}", { params: { path: { id: listed.id }, query: { units: "inch" } } }));
assert.equal(machine.id, listed.id);

// Every page of the springs.
const seen = new Set<string>();
let cursor: string | undefined;
let total = 0;
do {
  const page = right(await client.GET("/v1/parts", {
    params: { query: { kind: "driveSpring", limit: 20, ...(cursor === undefined ? {} : { cursor }) } },
  }));
  total = page.total;
  for (const part of page.items) {
    assert.ok(!seen.has(part.id), `${part.id} came twice.`);
    seen.add(part.id);
  }
  cursor = page.nextCursor ?? undefined;
} while (cursor !== undefined);
assert.equal(seen.size, total);
assert.ok(total > 20);

// A filter by a field, whose name stands in no type.
const stiff = right(await client.GET("/v1/parts", {
  params: { query: { kind: "driveSpring", fields: { "rate.min": "100 lbf/in" } } },
}));
assert.ok(stiff.total > 0 && stiff.total < total);

// What is fitted, and which parts would do better.
const prediction = right(await client.POST("/v1/predictions", {
  body: { machine: machine.id, altitude: "1500 m", temperature: { value: 50, unit: "°F" }, ratioPoints: 3 },
}));
assert.equal(prediction.curve.length, 3);
const asked = await client.POST("/v1/picks", {
  body: {
    machine: machine.id,
    targets: { engagementRpm: 2200, shiftRpm: 7900 },
    keep: ["drivenSpring", "hole", "helix"],
    count: 2,
  },
});
const pick = right(asked);
assert.ok(pick.picks.length > 0 && pick.work.proven);

// The same pick by its id, and once more by its tag.
const again = await client.GET("/v1/picks/{id}", { params: { path: { id: pick.id } } });
assert.deepEqual(right(again), pick);
const tag = again.response.headers.get("ETag");
assert.ok(tag);
const known = await client.GET("/v1/picks/{id}", { params: { path: { id: pick.id } }, headers: { "If-None-Match": tag } });
assert.equal(known.response.status, 304);

// A refusal, by its type.
const refused = await client.POST("/v1/predictions", { body: { machine: "valley-twoseater" } });
const problem: Problem | undefined = refused.error;
assert.ok(problem);
assert.equal(problem.code, "unknown-machine" satisfies Problem["code"]);
assert.deepEqual([problem.status, problem.errors[0]?.pointer], [400, "/machine"]);
assert.match(problem.errors[0]?.expected ?? "", /valley-two-seater/);

// A run of many: each line has the type of the document, only their joining is done by hand.
const questions: components["schemas"]["BulkPredictionRequest"][] = [
  { id: "low", request: { machine: machine.id, ratioPoints: 3 } },
  { id: 17, request: { machine: machine.id, ratioPoints: 3 }, axes: [{ member: "/altitude", from: 0, to: 3000, step: 1500, unit: "m" }] },
];
const run = await client.POST("/v1/bulk-predictions", {
  body: questions[0]!,
  bodySerializer: () => questions.map((line) => JSON.stringify(line) + "\n").join(""),
  headers: { "Content-Type": "application/x-ndjson" },
  parseAs: "text",
});
const lines = (right(run) as unknown as string).trimEnd().split("\n").map((line) => JSON.parse(line) as BulkLine);
assert.equal(lines.length, 5);
assert.ok(lines.slice(0, -1).every((line) => "status" in line && line.status === 200));
const end = lines.at(-1);
assert.ok(end && "done" in end && end.count === 4 && end.problem === null);

console.log("clients: TypeScript ok");
