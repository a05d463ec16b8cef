#!/usr/bin/env bash
# Makes a client in C# and one in TypeScript from the API document, compiles both strictly, and has each hold a
# conversation with a service that is started for it. Needs a build of the service, and npm ci in tests/tools.
set -euo pipefail
cd "$(dirname "$0")/../../.."
readonly tools=tests/tools document=openapi/part-picker.v1.json
readonly typescript=$tools/obj/typescript csharp=$tools/clients/csharp
export KIOTA_OFFLINE_ENABLED=true DOTNET_CLI_TELEMETRY_OPTOUT=1

work=$(mktemp -d)
service=
end() {
    if [[ -n "$service" ]]; then
        kill "$service" 2> /dev/null || true
        wait "$service" || true
    fi
    rm -rf "$work"
}
trap end EXIT

dotnet src/PartPicker.Api/bin/Release/net10.0/PartPicker.Api.dll --quiet --port 0 --data "$work/data" > "$work/service.log" &
service=$!

dotnet tool restore
rm -rf "$csharp/obj/client"
dotnet kiota generate --language CSharp --openapi "$document" --class-name PartPickerClient --namespace-name PartPicker.Client \
    --output "$csharp/obj/client" --log-level Error \
    --serializer Microsoft.Kiota.Serialization.Json.JsonSerializationWriterFactory \
    --deserializer Microsoft.Kiota.Serialization.Json.JsonParseNodeFactory
dotnet restore "$csharp" --locked-mode
dotnet build "$csharp" -c Release --no-restore

rm -rf "$typescript"
mkdir -p "$typescript"
cp "$tools/clients/typescript/conversation.mts" "$typescript"
"$tools/node_modules/.bin/openapi-typescript" "$document" --output "$typescript/schema.mts"
"$tools/node_modules/.bin/tsc" --project "$tools/clients/typescript"

for _ in {1..600}; do
    address=$(sed -n 's/^listening on //p' "$work/service.log")
    [[ -n "$address" ]] && break
    sleep 0.1
done
dotnet "$csharp/bin/Release/net10.0/Conversation.dll" "$address"
node "$typescript/out/conversation.mjs" "$address"
echo "clients: C# ok, TypeScript ok"
