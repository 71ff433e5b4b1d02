namespace QuarterCar.Web.Form;

/// <summary>Labels: the trade's terms for paths whose last key says too little by itself.</summary>
internal static class FieldWords
{
    /// <summary>The label of a path.</summary>
    public static string Of(string path) => path switch
    {
        "corner.sprung_weight" => "Sprung weight",
        "corner.spring_load" => "Spring load",
        "corner.unsprung_weight" => "Unsprung weight",
        "corner.motion_ratio" => "Motion ratio",
        "coilover.preload" => "Preload (coil nut)",
        "coilover.stop_nut.gap" => "Stop-nut gap",
        "coilover.stop_nut.at" => "Gap measured at",
        "coilover.damper.compression" => "Compression",
        "coilover.damper.rebound" => "Rebound",
        "coilover.bump_stop.on" => "Sits on",
        "coilover.bump_stop.force" => "Force over compression",
        "coilover.body.diameter" => "Body diameter",
        "coilover.body.slider" => "Slider height",
        "coilover.body.thread" => "Thread length",
        "tyre.rate" => "Vertical rate",
        "tyre.radius" => "Free radius",
        "tyre.contact" => "Feels the ground by",
        "drop.height" => "Drop height",
        "run.duration" => "Duration of the run",
        "run.sample" => "Between rows of the trace",
        "run.tolerance" => "Accuracy",
        _ => Last(path),
    };

    /// <summary>"free length".</summary>
    public static string Last(string path)
    {
        string last = path[(path.LastIndexOf('.') + 1)..];
        int bracket = last.IndexOf('[', StringComparison.Ordinal);
        string words = (bracket < 0 ? last : last[..bracket]).Replace('_', ' ');
        return words.Length == 0 ? path : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>A choice in words.</summary>
    public static string Choice(string word) => word.Replace('_', ' ');
}
