using System.Diagnostics;
using System.Globalization;

using QuarterCar.Scenarios;

namespace QuarterCar.Fuzzing;

/// <summary>One input given to one reader, and what is wrong with how that went.</summary>
internal static class Trial
{
    /// <summary>Longest that an input may take.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    // Other work on the machine makes anything slow now and then; a slow input is slow every time.
    private const int Retimings = 3;

    /// <summary>What is wrong; null for nothing.</summary>
    /// <param name="reader">The reader.</param>
    /// <param name="input">The input.</param>
    /// <param name="verdict">What the reader made of it; null where it threw.</param>
    public static string? Fault(Reader reader, byte[] input, out Verdict? verdict)
    {
        long before = GC.GetAllocatedBytesForCurrentThread(), start = Stopwatch.GetTimestamp();
        verdict = null;
        try
        {
            verdict = reader.Read(input);
        }
        catch (Exception e)
        {
            return $"{e.GetType().Name} in {Where(e)}: {e.Message}";
        }

        TimeSpan took = Stopwatch.GetElapsedTime(start);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        if (allocated > reader.MostAllocated + (Reader.EachByte * input.Length)) return string.Create(CultureInfo.InvariantCulture, $"allocates {allocated / 1e6:0} MB");
        for (int i = 0; i < Retimings && took > Patience; i++) took = Timed(reader, input);
        if (took > Patience) return string.Create(CultureInfo.InvariantCulture, $"takes {took.TotalSeconds:0.0} s");
        return Words(verdict);
    }

    /// <summary>What kind of fault it is, for telling one from another.</summary>
    public static string Kind(string fault) => fault.StartsWith("takes", StringComparison.Ordinal) || fault.StartsWith("allocates", StringComparison.Ordinal) ? fault[..5] : fault.Split(':')[0];

    private static string? Words(Verdict verdict)
    {
        if (!verdict.Accepted && verdict.Lines.IsEmpty) return "refused without a word";
        if (verdict.Unplaced is { } line) return "names no place: " + line;
        return verdict.Lines.FirstOrDefault(l => !l.All(PlainText.IsShown)) is { } raw ? "a message with characters that steer a terminal: " + raw : null;
    }

    // The processor's time where that is less: a machine with other work on it makes everything slow, not this input.
    private static TimeSpan Timed(Reader reader, byte[] input)
    {
        TimeSpan before = Processor();
        long start = Stopwatch.GetTimestamp();
        reader.Read(input);
        TimeSpan wall = Stopwatch.GetElapsedTime(start), busy = Processor() - before;
        return busy < wall ? busy : wall;
    }

    private static TimeSpan Processor()
    {
        using var self = Process.GetCurrentProcess();
        return self.TotalProcessorTime;
    }

    private static string Where(Exception e) =>
        new StackTrace(e).GetFrames().Select(f => f.GetMethod()).FirstOrDefault(m => m?.DeclaringType?.Namespace?.StartsWith("QuarterCar", StringComparison.Ordinal) == true) is { } method
            ? $"{method.DeclaringType!.Name}.{method.Name}"
            : "the library";
}
