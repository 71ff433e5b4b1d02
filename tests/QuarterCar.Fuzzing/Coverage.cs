using System.Diagnostics;
using System.Runtime.InteropServices;

using SharpFuzz;

namespace QuarterCar.Fuzzing;

/// <summary>
/// Branches counted by an instrumented copy of the program (SharpFuzz), in the process itself: an input that takes a branch, or takes one about twice as
/// often as any before, is worth mutating further. Off in a plain build.
/// </summary>
internal static unsafe class Coverage
{
    // The size that the instrumentation counts in.
    private const int Size = 1 << 16;

    private const string Variable = "QUARTERCAR_FUZZ_COUNTED";

    private static readonly byte* s_map = Environment.GetEnvironmentVariable(Variable) is null ? null : (byte*)NativeMemory.AllocZeroed(Size);

    private static readonly byte[] s_seen = new byte[Size];

    /// <summary>True in an instrumented copy.</summary>
    public static bool IsOn => s_map is not null;

    /// <summary>Branches met so far.</summary>
    public static int Met => s_seen.Count(b => b != 0);

    /// <summary>Makes an instrumented copy beside this program and runs it with the same arguments.</summary>
    public static int RunCounted(string[] args)
    {
        // Inside the checkout, whose files are the seeds.
        string from = AppContext.BaseDirectory, copy = Path.Combine(from, "counted-" + Environment.ProcessId.ToString(System.Globalization.CultureInfo.InvariantCulture));
        string[] files = Directory.GetFiles(from, "*", SearchOption.AllDirectories);
        try
        {
            foreach (string file in files.Where(f => !Path.GetRelativePath(from, f).StartsWith("counted-", StringComparison.Ordinal)))
            {
                string to = Path.Combine(copy, Path.GetRelativePath(from, file));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to);
            }

            foreach (string name in (string[])["QuarterCar.Scenarios", "QuarterCar.Studies", "QuarterCar.Web", "quartercar", "YamlDotNet", "CsvHelper"])
                Fuzzer.Instrument(Path.Combine(copy, name + ".dll"), _ => true, Options.Value);
            var start = new ProcessStartInfo("dotnet", [Path.Combine(copy, typeof(Coverage).Assembly.GetName().Name + ".dll"), .. args]);
            start.Environment[Variable] = "1";
            using Process process = Process.Start(start)!;
            process.WaitForExit();
            return process.ExitCode;
        }
        finally
        {
            Directory.Delete(copy, recursive: true);
        }
    }

    /// <summary>Begins to count from zero.</summary>
    public static void Clear()
    {
        if (s_map is null) return;
        SharpFuzz.Common.Trace.SharedMem = s_map;
        SharpFuzz.Common.Trace.PrevLocation = 0;
        new Span<byte>(s_map, Size).Clear();
    }

    /// <summary>True where something was counted that no input showed before.</summary>
    public static bool IsNew()
    {
        bool news = false;
        var counts = new ReadOnlySpan<ulong>(s_map, Size / sizeof(ulong));
        for (int word = 0; word < counts.Length; word++)
        {
            if (counts[word] == 0) continue;
            for (int i = word * sizeof(ulong); i < (word + 1) * sizeof(ulong); i++)
            {
                byte bucket = (byte)(s_map[i] == 0 ? 0 : 1 << System.Numerics.BitOperations.Log2(s_map[i]));
                if ((s_seen[i] | bucket) == s_seen[i]) continue;
                s_seen[i] |= bucket;
                news = true;
            }
        }

        return news;
    }
}
