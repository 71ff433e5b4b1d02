using System.Buffers;
using System.Text;
using System.Text.Json;

using QuarterCar.Reports.Json;
using QuarterCar.Scenarios;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>Writes a study as JSON, row by row as they come, one line a setup, so that parts can be put together and huge studies read without holding them: head, setups, and what the study adds behind them.</summary>
public sealed class StudyJson : IDisposable
{
    private static readonly JsonWriterOptions s_line = FigureJson.Options with { Indented = false };

    private static readonly JsonEncodedText[] s_names = [.. FigureTable.Names.Select(n => JsonEncodedText.Encode(n))];

    private readonly Stream _stream;
    private readonly ArrayBufferWriter<byte> _buffer = new(4096);
    private readonly Utf8JsonWriter _json;
    private bool _any;

    /// <summary>Writes the head.</summary>
    public StudyJson(Stream stream, StudyHead head)
    {
        _stream = stream;
        _json = new Utf8JsonWriter(_buffer, s_line);
        Text("{");
        Property("study", j => j.WriteStringValue(head.Study));
        Property("title", j => j.WriteStringValue(head.Title));
        Property("scenario_hash", j => j.WriteStringValue(head.Hash));
        Property("version", j => j.WriteStringValue(SummaryJson.Version));
        Property("units", j => j.WriteStringValue(head.Units == UnitSystem.Us ? "us" : "si"));
        Property("hold", j => j.WriteStringValue(head.Hold));
        Property("paths", j => Strings(j, head.Paths));
        if (head.Parts > 1)
        {
            Property("part", j => j.WriteNumberValue(head.Part));
            Property("parts", j => j.WriteNumberValue(head.Parts));
        }

        if (head.Seed is { } seed) Property("seed", j => j.WriteNumberValue(seed));
        Property("setup_count", j => j.WriteNumberValue(head.Setups));
        Text("\n  \"setups\": [");
    }

    /// <summary>Writes one row.</summary>
    public void Row(StudyRow row)
    {
        Text(_any ? ",\n    " : "\n    ");
        _any = true;
        _json.WriteStartObject();
        _json.WriteString("title", row.Request.Title);
        _json.WriteStartObject("values");
        foreach (SetupValue value in row.Request.Values)
        {
            if (value.Si is not null) _json.Number(value.Path, value.Si);
            else _json.WriteString(value.Path, value.Text);
        }

        _json.WriteEndObject();
        _json.WriteString("stop_nut", row.NutWord);
        _json.WriteString("note", row.Note);
        Figures(row);
        _json.WriteEndObject();
        Flush();
    }

    /// <summary>Ends the document.</summary>
    /// <param name="more">Properties that the study adds, in order.</param>
    public void End(params ReadOnlySpan<(string Name, Action<Utf8JsonWriter> Write)> more)
    {
        Text(_any ? "\n  ]" : "]");
        foreach (var (name, write) in more)
        {
            Text(",\n  ");
            Name(name);
            write(_json);
            Flush();
        }

        Text("\n}\n");
    }

    /// <summary>Lets go of the buffer; the stream stays open.</summary>
    public void Dispose() => _json.Dispose();

    private void Figures(StudyRow row)
    {
        if (row.Figures is not { } figures)
        {
            _json.WriteNull("figures");
            return;
        }

        _json.WriteStartObject("figures");
        for (int i = 0; i < s_names.Length; i++)
        {
            if (figures[i] is { } v && double.IsFinite(v)) _json.WriteNumber(s_names[i], v + 0.0);
            else _json.WriteNull(s_names[i]);
        }

        _json.WriteEndObject();
    }

    private static void Strings(Utf8JsonWriter json, IEnumerable<string> texts)
    {
        json.WriteStartArray();
        foreach (string text in texts) json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private void Property(string name, Action<Utf8JsonWriter> write)
    {
        Text("\n  ");
        Name(name);
        write(_json);
        Flush();
        Text(",");
    }

    private void Name(string name) => Text($"\"{JsonEncodedText.Encode(name)}\": ");

    private void Flush()
    {
        _json.Flush();
        _stream.Write(_buffer.WrittenSpan);
        _buffer.ResetWrittenCount();
        _json.Reset();
    }

    private void Text(string text) => _stream.Write(Encoding.UTF8.GetBytes(text));
}
