"""Starts the service on a catalog and asks it."""

import json
import os
import signal
import subprocess
import tempfile
import urllib.error
import urllib.request
from contextlib import contextmanager
from pathlib import Path
from typing import Iterator

from catalog import Item

ROOT = Path(__file__).resolve().parents[2]
ANSWER_SECONDS = 60


class Refused(Exception):
    """The service refused a request; its error codes."""

    def __init__(self, codes: list[str]) -> None:
        super().__init__(", ".join(codes))
        self.codes = codes


class Service:
    def __init__(self, address: str) -> None:
        self.address = address

    def predict(self, request: Item) -> Item:
        """The prediction, with every digit."""
        return self._ask("predictions", request)

    def pick(self, request: Item) -> Item:
        """The ranked sets, with every digit."""
        return self._ask("picks", request)

    def _ask(self, path: str, request: Item) -> Item:
        asked = urllib.request.Request(
            f"{self.address}/v1/{path}?precision=full&units=metric", json.dumps(request).encode(),
            {"Content-Type": "application/json"})
        try:
            with urllib.request.urlopen(asked, timeout=ANSWER_SECONDS) as answer:
                return json.load(answer)
        except urllib.error.HTTPError as error:
            problem = json.load(error)
            raise Refused([e["code"] for e in problem.get("errors", [])] or [problem["code"]]) from error


@contextmanager
def running(catalog: Path) -> Iterator[Service]:
    """The built service on a free port and a store of its own, stopped at the end."""
    command = ["dotnet", "run", "--project", "src/PartPicker.Api", "-c", "Release", "--no-build", "--",
               "--quiet", "--port", "0", "--catalog", str(catalog)]
    with tempfile.TemporaryDirectory() as data:
        process = subprocess.Popen(
            [*command, "--data", data], cwd=ROOT, stdout=subprocess.PIPE, text=True, start_new_session=True)
        try:
            yield Service(_address(process))
        finally:
            os.killpg(process.pid, signal.SIGTERM)
            process.communicate()


def _address(process: subprocess.Popen[str]) -> str:
    assert process.stdout
    said = []
    for line in process.stdout:
        if line.startswith("listening on "):
            return line.split()[-1]
        said.append(line)
    raise RuntimeError("The service ended before it listened:\n" + "".join(said))
