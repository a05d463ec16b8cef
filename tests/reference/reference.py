"""Compares the service's predictions and rankings with the reference, over the sample catalog."""

import argparse
import sys
import time
from pathlib import Path

from catalog import Catalog, Item
from compare import FLAT_PLACES, Deviation, deviations
from parts import PartSet
from prediction import Machine, predict
from ranking import Question, narrowed
from samples import random_requests, sample_requests
from service import ROOT, Refused, Service, running

ALLOWED = 1e-9  # The service narrows an rpm to 1e-6 or better; the model asks for an agreement of 1e-6.
ALLOWED_FLAT = 1e-6
ALLOWED_MISS = 0.000501  # A miss is written with three decimals.
TRIES_FOR_EACH = 60


class Report:
    """Counts the answers that agree, and keeps the worst number of all."""

    def __init__(self) -> None:
        self.passed = self.failed = self.numbers = 0
        self.worst, self.worst_rpm = Deviation("", 0.0), Deviation("", 0.0)

    def add(self, label: str, machine: Machine, request: Item, answer: Item) -> None:
        found = list(deviations(predict(machine, request), answer))
        beyond = [d for d in found if not d.relative <= _allowed(d)]  # A NaN does not agree either.
        self.numbers += len(found)
        self.worst = max(self.worst, *(d for d in found if _allowed(d) == ALLOWED), key=lambda d: d.relative)
        self.worst_rpm = max(self.worst_rpm, *found, key=lambda d: d.rpm)
        self.passed, self.failed = self.passed + (not beyond), self.failed + bool(beyond)
        if beyond:
            print(f"{label}: {len(beyond)} of {len(found)} numbers differ; the first are")
            for d in beyond[:5]:
                print(f"  {d.place}  {d.relative:.2e} relative")
            print(f"  asked: {request}")


def _allowed(deviation: Deviation) -> float:
    return ALLOWED_FLAT if deviation.place.rsplit("/", 1)[-1] in FLAT_PLACES else ALLOWED


def compare_random(service: Service, catalog: Catalog, machine: Machine, sets: int, seed: int, report: Report) -> None:
    """So many random sets as the service computes; fewer than that is a failure."""
    accepted = refused = 0
    requests = random_requests(catalog, machine, seed)
    while accepted < sets and accepted + refused < TRIES_FOR_EACH * sets:
        request = next(requests)
        try:
            answer = service.predict(request)
        except Refused as refusal:
            if set(refusal.codes) != {"part-unusable"}:
                raise
            refused += 1
            continue
        accepted += 1
        report.add(f"{machine.item['id']}, random set {accepted} of seed {seed}", machine, request, answer)
    print(f"{machine.item['id']}: {accepted} random sets, {refused} more were refused as unusable")
    report.failed += accepted < sets


def compare_ranking(label: str, question: Question, answer: Item, report: Report) -> None:
    """Ids, order, changes, price and miss of the sets that the service lists for a narrow question."""
    if answer["refusalsLeftOut"]:
        raise RuntimeError(f"{label}: the service left refusals out, so the pools are not known")
    combinations = sum(1 for _ in question.sets())
    ranked, picks = question.ranked(), answer["picks"]
    ours = [_outline(r.chosen, r.changes, r.price) for r in ranked]
    theirs = [_outline(PartSet.read(_flat(p["parts"])), len(p["changes"]), _amount(p)) for p in picks]
    agrees = combinations == answer["work"]["combinations"] and ours[:len(theirs)] == theirs \
        and len(theirs) == min(len(ours), question.request["count"]) \
        and max((abs(r.miss - pick["miss"]) for r, pick in zip(ranked, picks)), default=0) <= ALLOWED_MISS
    report.passed, report.failed = report.passed + agrees, report.failed + (not agrees)
    print(f"{label}: {combinations} sets, {len(theirs)} listed, {'same order' if agrees else 'DIFFERENT'}")
    if not agrees:
        print(f"  combinations {answer['work']['combinations']} there; {len(ours)} ranked here")
        for our, their in [pair for pair in zip(ours, theirs) if pair[0] != pair[1]][:3]:
            print(f"  here {our}\n  there {their}")


def _outline(chosen: PartSet, changes: int, price: int | None) -> tuple[Item, int, int | None]:
    stated = chosen.wire()
    stated["stationMasses"] = {s: m for s, m in stated["stationMasses"].items() if m != "0 g"}
    return stated, changes, price


def _flat(parts: Item) -> Item:
    """The set of an answer in the form that a request states it."""
    body = parts["flyweight"]
    return {
        "driveSpring": parts["driveSpring"]["id"], "drivenSpring": parts["drivenSpring"]["id"],
        "helix": parts["helix"]["id"], "hole": parts["hole"],
        "flyweight": body["id"], "adjusterStep": body["adjusterStep"],
        "stationMasses": {s: f"{m['value']} {m['unit']}" for s, m in (body["stationMasses"] or {}).items()},
    }


def _amount(pick: Item) -> int | None:
    return pick["price"] and pick["price"]["amountMinor"]


def main() -> int:
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--sets", type=int, default=8, help="random sets for each machine")
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--ranked", type=int, default=100, help="rank narrowed questions of so many sets at most")
    arguments.add_argument("--catalog", type=Path, default=ROOT / "catalog-samples")
    chosen = arguments.parse_args()
    start = time.monotonic()
    catalog = Catalog(chosen.catalog)
    machines = {machine: Machine(catalog, machine) for machine in sorted(catalog.kinds["machines"])}
    report = Report()
    with running(chosen.catalog) as service:
        asked = {f"{m} as fitted": {"machine": m} for m in machines} | sample_requests(chosen.catalog, "prediction")
        for label, request in asked.items():
            report.add(label, machines[request["machine"]], request, service.predict(request))
        for machine in machines.values():
            compare_random(service, catalog, machine, chosen.sets, chosen.seed, report)
        for label, request in sample_requests(chosen.catalog, "pick").items():
            narrow = narrowed(catalog, request)
            answer = service.pick(narrow) if narrow else None
            if narrow and answer and answer["work"]["combinations"] <= chosen.ranked:
                compare_ranking(label, Question(machines[request["machine"]], narrow, answer["refusals"]), answer, report)
    print(f"{report.numbers} numbers compared in {time.monotonic() - start:.0f} s")
    print(f"worst relative deviation {report.worst.relative:.1e} at {report.worst.place}")
    print(f"worst rpm deviation {report.worst_rpm.rpm:.1e} rpm at {report.worst_rpm.place}")
    print(f"{report.passed} passed, {report.failed} failed")
    print(f"reference: worst {report.worst.relative:.1e} relative, {report.worst_rpm.rpm:.1e} rpm")
    return int(report.failed > 0 or report.passed == 0)


if __name__ == "__main__":
    sys.exit(main())
