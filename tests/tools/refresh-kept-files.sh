#!/usr/bin/env bash
# Writes anew, from what the service says now, the files that tests hold equal to it: answers of the examples and of
# the sample requests, the API document, docs/fit.md and docs/fields.md.
# The examples are built into the service, and so the document follows only after a second build.
set -euo pipefail
cd "$(dirname "$0")/../.."
export PART_PICKER_REFRESH=1
refresh() { dotnet test tests/PartPicker.Service.Tests -c Release --filter "$1"; }
refresh FullyQualifiedName~ExampleTests.An_example
refresh "FullyQualifiedName~OpenApiFileTests|FullyQualifiedName~WrittenPageTests|FullyQualifiedName~SampleAnswerTests"
git --no-pager diff --stat -- src/PartPicker.Api/Docs/Examples openapi docs catalog-samples/answers
