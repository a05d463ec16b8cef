#!/usr/bin/env bash
# Writes anew what the repository keeps of what the service says: the answers of the examples, the answers of the
# sample questions, the pages of reference, the API document, and the picture of part load. Look at the difference before you commit it.
# The examples are built into the service, and so the document follows only after a second build.
set -euo pipefail
cd "$(dirname "$0")/../.."
project=tests/PartPicker.Service.Tests
export PART_PICKER_REFRESH=1
dotnet test "$project" -c Release \
    --filter "FullyQualifiedName~ExampleTests.An_example|FullyQualifiedName~StoredAnswerTests|FullyQualifiedName~ReferencePageTests.The_committed"
dotnet test "$project" -c Release --filter FullyQualifiedName~OpenApiFileTests
dotnet test tests/PartPicker.Tests -c Release --filter FullyQualifiedName~PublishedPartLoadTests.The_committed
git --no-pager diff --stat -- src/PartPicker.Api/Docs/Examples openapi docs catalog-samples/answers
