namespace QuarterCar.Cli.Help;

/// <summary>Verbs that are no question to a corner.</summary>
internal static partial class HelpTexts
{
    /// <summary>`serve`.</summary>
    public static readonly VerbHelp Serve = new("serve", "serves the live page to this machine alone, until Ctrl-C.")
    {
        About =
        [
            "Shows the corner in a browser: turn the coil nut, the stop nut, a spring or the speed, and the ride, the plots and the coilover to scale follow at once. Prints the address on standard output. It answers on this machine only and needs no network.",
            "The scenario file is read, never written: what was changed on the page is taken away as a file from the page.",
        ],
        Done = "Never: the page is served until it is interrupted.",
        Interrupted = "Ended by Ctrl-C, as it should be.",
        Examples = ["quartercar serve", "quartercar serve scenarios/quarry-ledge.yaml --port 47113"],
        See = ["run", "sheet"],
    };

    /// <summary>`schema`.</summary>
    public static readonly VerbHelp Schema = new("schema", "prints the JSON Schema of the scenario file, for editors.")
    {
        About =
        [
            "An editor that knows JSON Schema for YAML completes the keys, shows what each is, and marks mistakes while typing. Write it to a file beside the scenario, scenario.schema.json, and let the scenario's first line name it:",
            "# yaml-language-server: $schema=scenario.schema.json",
            "The schema is made from the same table of keys that the reader, 'new' and every message use; what it cannot say (whether a spring carries the load, which keys go together by value) check says.",
        ],
        Interrupted = "Interrupted by Ctrl-C.",
        Examples = ["quartercar schema"],
        See = ["new", "check"],
    };

    /// <summary>`completion`.</summary>
    public static readonly VerbHelp Completion = new("completion", "prints a script by which a shell completes what is typed.")
    {
        About =
        [
            "With it the shell completes verbs, options, paths into the scenario after --set and --vary, and figures after --goal. The script's first line says where it goes; it asks the program 'quartercar', which has to be on the path.",
        ],
        Interrupted = "Interrupted by Ctrl-C.",
        Examples = ["quartercar completion bash"],
        See = ["schema"],
    };
}
