"""Compares the service's predictions with the reference, over the sample catalog."""

import argparse
import sys
import time
from pathlib import Path

from catalog import Catalog, Item
from compare import FLAT_PLACES, Deviation, deviations
from prediction import Machine, predict
from samples import random_requests, sample_requests
from service import ROOT, Refused, Service, running

ALLOWED = 1e-9  # The service narrows an rpm to 1e-6 or better; the model asks for an agreement of 1e-6.
ALLOWED_FLAT = 1e-6
TRIES_FOR_EACH = 60


class Report:
    """Counts the answers that agree, and keeps the worst number of all."""

    def __init__(self) -> None:
        self.passed = self.failed = self.numbers = 0
        self.worst, self.worst_rpm = Deviation("", 0.0), Deviation("", 0.0)

    def add(self, label: str, machine: Machine, request: Item, answer: Item) -> None:
        found = list(deviations(predict(machine, request), answer))
        beyond = [d for d in found if d.relative > _allowed(d)]
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


def main() -> int:
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--sets", type=int, default=8, help="random sets for each machine")
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--catalog", type=Path, default=ROOT / "catalog-samples")
    chosen = arguments.parse_args()
    start = time.monotonic()
    catalog = Catalog(chosen.catalog)
    machines = {machine: Machine(catalog, machine) for machine in sorted(catalog.kinds["machines"])}
    report = Report()
    with running(chosen.catalog) as service:
        asked = {f"{m} as fitted": {"machine": m} for m in machines} | sample_requests(chosen.catalog)
        for label, request in asked.items():
            report.add(label, machines[request["machine"]], request, service.predict(request))
        for machine in machines.values():
            compare_random(service, catalog, machine, chosen.sets, chosen.seed, report)
    print(f"{report.numbers} numbers compared in {time.monotonic() - start:.0f} s")
    print(f"worst relative deviation {report.worst.relative:.1e} at {report.worst.place}")
    print(f"worst rpm deviation {report.worst_rpm.rpm:.1e} rpm at {report.worst_rpm.place}")
    print(f"{report.passed} passed, {report.failed} failed")
    print(f"reference: worst {report.worst.relative:.1e} relative, {report.worst_rpm.rpm:.1e} rpm")
    return int(report.failed > 0 or report.passed == 0)


if __name__ == "__main__":
    sys.exit(main())
