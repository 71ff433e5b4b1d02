using System.Text.Json;

using QuarterCar.Reports.Files;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>A property that a study adds behind its setups.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Write">Writes its value.</param>
public sealed record JsonMore(string Name, Action<Utf8JsonWriter> Write);

/// <summary>Table and JSON of a study, written while it runs, so that memory does not grow with the number of its setups.</summary>
public static class StudyFiles
{
    /// <summary>Writes NAME.csv and NAME.json into an open folder, which the caller commits.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="head">The study; its name names the files.</param>
    /// <param name="produce">Runs the study and hands on its rows in order.</param>
    /// <param name="more">What the JSON holds behind the setups, asked after the last row.</param>
    public static void Write(ResultFolder folder, StudyHead head, Action<Action<StudyRow>> produce, Func<IEnumerable<JsonMore>>? more = null) =>
        folder.Write(head.Study + ".csv", table => folder.Write(head.Study + ".json", json =>
        {
            using var csv = new StudyCsv(table, head.Paths);
            Write(json, head, take => produce(row =>
            {
                csv.Row(row);
                take(row);
            }), more);
        }));

    /// <summary>Writes the JSON alone.</summary>
    public static void Write(Stream stream, StudyHead head, Action<Action<StudyRow>> produce, Func<IEnumerable<JsonMore>>? more = null)
    {
        using var json = new StudyJson(stream, head);
        produce(json.Row);
        json.End([.. (more?.Invoke() ?? []).Select(m => (m.Name, m.Write))]);
    }

    /// <summary>The JSON, kept in a temporary file until the study is done and only then copied: what was broken off leaves nothing behind.</summary>
    public static void WriteWhole(Stream stream, StudyHead head, Action<Action<StudyRow>> produce, Func<IEnumerable<JsonMore>>? more = null)
    {
        using FileStream file = ScratchFile.Open();
        Write(file, head, produce, more);
        file.Position = 0;
        file.CopyTo(stream);
    }
}
