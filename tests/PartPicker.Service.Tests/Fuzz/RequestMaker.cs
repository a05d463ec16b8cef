using System.Text;
using System.Text.Json.Nodes;
using PartPicker.Service.Tests.Contract;

namespace PartPicker.Service.Tests.Fuzz;

/// <summary>Makes requests from the API document: valid ones, nearly valid ones, and hostile ones.</summary>
internal sealed class RequestMaker(ApiFile api, Pools pools, int seed)
{
    private static readonly string[] MediaTypes =
    [
        "application/json", "application/x-ndjson", "text/plain", "application/json; charset=utf-16", "application/json;;",
        "application/json; charset=\"utf-8\"", "APPLICATION/JSON", "application/problem+json", "*/*", "json", "\u00e9",
    ];

    private static readonly (string, string)[] OddHeaders =
    [
        ("Accept", "text/html"), ("Accept", "*/*;q=0"), ("Accept-Encoding", "gzip, br"), ("Content-Encoding", "gzip"),
        ("Content-Encoding", "identity"), ("Content-Encoding", "br, gzip"), ("If-None-Match", "*"), ("If-None-Match", "W/\"1\""),
        ("If-None-Match", "\"\", ,\"a"), ("If-Match", "\"1\""), ("If-Modified-Since", "yesterday"), ("Range", "bytes=0-9"),
        ("Expect", "200-maybe"), ("X-Http-Method-Override", "DELETE"), ("Cookie", "a=b; c"), ("Authorization", "Basic !!"),
        ("Accept-Language", "de, *;q=0.1"), ("X-Forwarded-For", "::1"), ("Content-Language", "xx-\u00e9"), ("TE", "trailers"),
    ];

    private static readonly string[] Methods = ["GET", "POST", "PUT", "DELETE", "PATCH", "HEAD", "OPTIONS", "TRACE", "QUERY", "get"];

    private static readonly string[] OddPaths =
    [
        "/v1", "/v1/", "/v1//parts", "/v1/parts/", "/v1/parts/a/b", "/v2/parts", "/%2e%2e/v1/parts", "/v1/PARTS", "/v1/parts%2Fx",
    ];

    private static readonly string[] QueryBits =
    [
        "=", "&", "?", "%", "%zz", "%00", "%FF", "%C0%AF", "a", "a=b", "units=inch", "units=inch&units=inch", "rate.min=60%20lbf/in",
        "rate.max=1e400%20N/mm", "helixDeg.min=NaN", "material=music-wire-a228", "kind=helix", ".min=3", "name=", "limit=1e1", "limit=+5",
        "fields=x", "colour.max=red", "freeLength.min=1%20in&freeLength.max=2%20mm", "ends=open&ends=closed", "fromLine=2", "fromLine=0",
        "text=%F0%9F%98%80", "cursor=AAAA", "inStock=true", "id=a&id=b", "%75nits=metric",
    ];

    /// <summary>The request of that number, made from the seed and the number alone.</summary>
    public SentRequest Make(int number)
    {
        Random random = new(unchecked(seed * 31 + number * 7919));
        ValueMaker values = new(api, pools, random);
        Havoc havoc = new(random);
        ApiOperation operation = Pools.Pick(random, api.Operations);
        byte[]? body = operation.Body is { } sent ? Body(sent.MediaType, sent.Schema, values, havoc, random) : null;
        List<(string, string)> headers = [];
        if (operation.Body is { } taken)
            headers.Add(("Content-Type", random.Next(40) == 0 ? Pools.Pick(random, MediaTypes) : taken.MediaType));
        while (random.Next(12) == 0)
            headers.Add(Pools.Pick(random, OddHeaders));
        string method = random.Next(60) == 0 ? Pools.Pick(random, Methods) : operation.Method;
        bool astray = random.Next(60) == 0;
        string path = astray ? Pools.Pick(random, OddPaths) : Path(operation, random);
        string address = path + Query(operation, values, random);
        ApiOperation? known = method == operation.Method && !astray ? operation : null;
        return new SentRequest(known, method, address, headers, method is "GET" or "HEAD" or "TRACE" ? null : body);
    }

    private static byte[] Body(string mediaType, JsonObject schema, ValueMaker values, Havoc havoc, Random random)
    {
        bool lines = mediaType != "application/json";
        int count = lines ? random.Next(1, 4) : 1;
        StringBuilder text = new();
        for (int i = 0; i < count; i++)
        {
            string json = values.Make(schema, "");
            while (random.Next(3) == 0)
                json = havoc.Spoil(json);
            text.Append(json);
            if (lines)
                text.Append(Pools.Pick(random, ["\n", "\n", "\n", "\n", "\r\n", "\n\n", " \n", "\n}\n", ""]));
        }

        byte[] bytes = Encoding.UTF8.GetBytes(text.ToString());
        return random.Next(15) == 0 ? havoc.Break(bytes) : bytes;
    }

    private string Path(ApiOperation operation, Random random)
    {
        return operation.Path.Replace("{id}", Uri.EscapeDataString(Nameable(pools.Text(random, operation.Id))), StringComparison.Ordinal);

        // Without a name the path is another one, and so it is with dots alone.
        static string Nameable(string id) => id.Trim().Length == 0 || id.Contains('/') || id.Contains('\0') ? "0" : id;
    }

    private static string Query(ApiOperation operation, ValueMaker values, Random random)
    {
        List<string> bits = [];
        foreach (JsonObject parameter in operation.Query)
        {
            string name = (string)parameter["name"]!;
            var schema = parameter["schema"]!.AsObject();
            if (random.Next(operation.Query.Count + 2) > 1 || (string?)schema["type"] == "object")
                continue;
            string json = values.Make(schema, name);
            string value = json[0] == '"' ? (string)JsonNode.Parse(json)! : json;
            // A run begins with its first line, as a rule: else there would be nothing to answer.
            if (name == "fromLine" && random.Next(4) > 0)
                value = $"{random.Next(1, 4)}";
            bits.Add($"{name}={Uri.EscapeDataString(value)}");
        }

        while (random.Next(8) == 0)
            bits.Add(Pools.Pick(random, QueryBits));
        return bits.Count == 0 ? "" : "?" + string.Join('&', bits);
    }
}
