#!/usr/bin/env bash
# Writes the answers of the examples and the API document anew, from what the service says now.
# The examples are built into the service, and so the document follows only after a second build.
set -euo pipefail
cd "$(dirname "$0")/../.."
project=tests/PartPicker.Service.Tests
PART_PICKER_REFRESH=1 dotnet test "$project" -c Release --filter FullyQualifiedName~ExampleTests.An_example
PART_PICKER_REFRESH=1 dotnet test "$project" -c Release --filter FullyQualifiedName~OpenApiFileTests
PART_PICKER_REFRESH=1 dotnet test "$project" -c Release --filter FullyQualifiedName~WrittenPageTests
git --no-pager diff --stat -- src/PartPicker.Api/Docs/Examples openapi docs
