using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

using QuarterCar.Web.Answers;
using QuarterCar.Web.State;

namespace QuarterCar.Fuzzing;

/// <summary>What a browser, or what pretends to be one, sends to the live page. An input's first line says which question it is; the rest is its JSON.</summary>
internal static class PageReader
{
    private static readonly TimeSpan s_patience = TimeSpan.FromMilliseconds(100);

    private static readonly Library s_library = new(OpenedScenario.Shipped());

    private static readonly Runs s_runs = new();

    /// <summary>The page's questions.</summary>
    public static Reader Reader => new("page", Readers.Texts(Seeds()), [.. Words.Any, .. Words.Json, .. Words.Scenario], Read) { MostAllocated = 400_000_000 };

    private static Verdict Read(byte[] input)
    {
        int line = Array.IndexOf(input, (byte)'\n');
        string kind = Encoding.UTF8.GetString(input.AsSpan(0, Math.Max(0, line)));
        byte[] json = input[(line + 1)..];
        return kind switch
        {
            "matter" => Ask(json, RequestJson.Default.MatterRequest, new MatterAnswer(s_library).Write),
            "compare" => Ask(json, RequestJson.Default.CompareRequest, new CompareAnswer(s_library, s_runs).Write),
            "file" => Ask(json, RequestJson.Default.FileRequest, new FileAnswer(s_library, s_runs).Write),
            _ => Ask(json, RequestJson.Default.CornerRequest, new CornerAnswer(s_library, s_runs).Write),
        };
    }

    private static Verdict Ask<T>(byte[] json, JsonTypeInfo<T> type, Action<Stream, T, CancellationToken> answer)
        where T : class
    {
        using var cancel = new CancellationTokenSource(s_patience);
        using var body = new MemoryStream();
        try
        {
            if (JsonSerializer.Deserialize(json, type) is not { } request) return Refused("The request is empty.");
            if (Requests.Objection(request) is { } objection) return Refused(objection);
            answer(body, request, cancel.Token);
        }
        catch (JsonException)
        {
            return Refused("The request is no JSON of the expected form.");
        }
        catch (OperationCanceledException)
        {
            return Verdict.Good;
        }

        body.Position = 0;
        using var answered = JsonDocument.Parse(body);
        return Verdict.Good;
    }

    private static Verdict Refused(string words) => new(false, [words]);

    private static IEnumerable<string> Seeds()
    {
        string setup = Setup(Readers.Ledge, ("coilover.preload", "2 in")), small = Setup(s_small);
        yield return $$"""corner{{"\n"}}{"setup":{{small}},"edits":[{"path":"terrain[+]","text":"{flat: 10 ft}"},{"path":"speed","text":"4"}],"steps":[{"path":"coilover.springs.upper.rate","count":2}],"hold":"ride_height","base":[],"units":"si"}""";
        yield return $$"""corner{{"\n"}}{"setup":{{setup}},"steps":[{"path":"coilover.stop_nut.gap","count":-3},{"path":"coilover.damper.compression","count":1}],"hold":"crossover","base":[{"path":"speed","text":"5 mph"}],"units":"us","form":"x"}""";
        yield return $$"""corner{{"\n"}}{"setup":{{small}},"edits":[{"path":"excitation","text":"drop"},{"path":"terrain[0]","text":"none"}],"hold":"nut","base":[]}""";
        yield return $$"""matter{{"\n"}}{"setup":{{small}},"path":"coilover.stop_nut.gap","figure":"static.ride_height_m","units":null}""";
        yield return $$"""compare{{"\n"}}{"setups":[{{small}},{{setup}}],"units":"si"}""";
        foreach (string kind in (string[])["scenario", "sheet", "events"]) yield return $$"""file{{"\n"}}{"setup":{{small}},"kind":"{{kind}}"}""";
    }

    private static string Setup(string text, params (string Path, string Text)[] changes) =>
        JsonSerializer.Serialize(new { text, changes = changes.Select(c => new { path = c.Path, text = c.Text }), @case = (string?)null });

    private const string s_small = """
        title: Small corner
        corner: { sprung_weight: 3500 N, unsprung_weight: 600 N }
        tyre: { rate: 220 N/mm }
        coilover:
          stroke: 300 mm
          springs: { upper: { rate: 30 N/mm, free_length: 300 mm, solid_length: 100 mm }, lower: { rate: 40 N/mm, free_length: 350 mm, solid_length: 130 mm } }
          stop_nut: { gap: 20 mm, at: ride_height }
          damper: { compression: [[1 m/s, 1500 N]], rebound: [[1 m/s, 2500 N]] }
        terrain: [{ flat: 1 m }, { bump: { height: 50 mm, length: 1 m } }]
        speed: 3 m/s
        run: { duration: 0.2 s }
        cases: [{ name: loaded, corner.sprung_weight: +500 N }]
        """;
}
