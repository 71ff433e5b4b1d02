using CsvHelper;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Where text stops being CSV.</summary>
public static class CsvPlace
{
    /// <summary>The line of the record that is none: as the fault says it, else behind the last one that was read.</summary>
    /// <param name="file">Named in the message.</param>
    /// <param name="csv">The reader.</param>
    /// <param name="fault">What it threw.</param>
    public static Place Of(string file, CsvReader csv, Exception fault) =>
        new(file, fault is CsvFormatException { LineNumber: > 0 and var line } ? (int)line : Math.Max(1, (int)csv.LineNumber), 0);
}
