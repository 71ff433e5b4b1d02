using QuarterCar.TestKit.Programs;

namespace QuarterCar.LibraryTests.Notebooks;

/// <summary>Runs notebooks with the tool of .config/dotnet-tools.json, each in a kernel of its own. Its exit code tells nothing that counts: outputs are read.</summary>
internal static class NotebookHost
{
    private static readonly Lazy<bool> s_there = new(() => ProgramProcess.Shell(Checkout.Root, "dotnet tool restore").Code == 0);

    /// <summary>True where the tool is there or can be fetched.</summary>
    public static bool IsThere => s_there.Value;

    /// <summary>The project's notebooks.</summary>
    public static string Folder { get; } = Checkout.At("notebooks-csharp");

    /// <summary>Runs every cell from scratch, in the folder of the notebooks.</summary>
    /// <param name="path">The notebook.</param>
    public static Notebook Run(string path)
    {
        using var scratch = new Scratch();
        string ran = scratch.At("ran.ipynb");
        ProcessResult result = ProgramProcess.Shell(Folder, $"DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT=1 dotnet tool run dotnet-repl --run '{path}' --exit-after-run --output-path '{ran}' < /dev/null");
        return File.Exists(ran) ? Notebook.Load(ran) : throw new InvalidOperationException($"{path} gave no result: {result.Out}{result.Messages}");
    }
}

/// <summary>A fact that runs a notebook; skipped, with the reason, where the tool cannot be had. .ci/run fetches it first and fails without it.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class NotebookFactAttribute : FactAttribute
{
    public NotebookFactAttribute()
    {
        if (!NotebookHost.IsThere) Skip = NotebookTheoryAttribute.Reason;
    }
}

/// <summary>A theory that runs notebooks; skipped as <see cref="NotebookFactAttribute"/>.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class NotebookTheoryAttribute : TheoryAttribute
{
    internal const string Reason = "needs the notebook tool: dotnet tool restore did not get it";

    public NotebookTheoryAttribute()
    {
        if (!NotebookHost.IsThere) Skip = Reason;
    }
}
