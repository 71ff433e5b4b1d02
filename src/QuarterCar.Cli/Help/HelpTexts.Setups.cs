namespace QuarterCar.Cli.Help;

/// <summary>Verbs that hold setup against setup.</summary>
internal static partial class HelpTexts
{
    private const string Limits = "Limits that the scenario does not set are no metal to metal and no coil bind.";

    /// <summary>`compare`.</summary>
    public static readonly VerbHelp Compare = new("compare", "drives setup against setup over the same obstacle.")
    {
        Usage =
        [
            "compare SCENARIO SCENARIO... [OPTIONS]",
            "compare SCENARIO --vary PATH=V1,V2,… [--vary …] [OPTIONS]",
            "compare SCENARIO --split U1/L1,U2/L2,… [OPTIONS]",
            "compare SCENARIO --setups FILE.csv [OPTIONS]",
        ],
        About =
        [
            "Setups are two or more scenarios, or one scenario with the values that are varied: several --vary, --split and --setups together make a grid. The scenario as written is a row only where it is listed.",
            "With --hold ride_height every setup gets the preload that keeps the scenario's ride height, so that springs are compared and not ride heights. A setup that no preload carries keeps its row, with the reason in place of figures. Every row says whether the stop nut stays where it is on the body or is set anew.",
        ],
        Files =
        [
            new("compare.csv", "A row a setup: what varies, then every figure, in SI."),
            new("compare.json", "The same for programs."),
            new("report.html", "All of it on one page, with the pictures."),
            new("pictures", "shaft_travel, force_travel, travel_use: setups laid over each other, .png and .svg."),
            new("setups/NN/", "With --traces: trace.csv and events.csv of each setup."),
        ],
        Broken = SetupFailed,
        Examples =
        [
            "quartercar compare scenarios/quarry-ledge.yaml scenarios/quarry-ledge-longer-stop.yaml",
            "quartercar compare scenarios/quarry-ledge.yaml --split '140/250,160/225,180/200 lbf/in' --hold ride_height --out out/splits",
            "quartercar compare scenarios/quarry-ledge.yaml --vary coilover.stop_nut.gap='0.8,1.3,1.9 in'",
        ],
        See = ["sweep", "reach", "tweak", "gather"],
    };

    /// <summary>`sweep`.</summary>
    public static readonly VerbHelp Sweep = new("sweep", "runs a grid of values and finds the best point inside the limits.")
    {
        About =
        [
            "Takes one or more ranges, PATH=FROM:TO:COUNT, runs every point of their grid, and gives the point with the least or the most of the goal among those that break no limit, with the limit that lies nearest. " + Limits,
            OneModel,
        ],
        Files =
        [
            new("sweep.csv", "A row a point: what varies, then every figure, in SI."),
            new("sweep.json", "The same for programs, with the goal and the best point."),
            new("report.html", "All of it on one page."),
            new("sweep", "Picture: a curve of one range, a map of two, .png and .svg."),
        ],
        Broken = SetupFailed,
        Examples =
        [
            "quartercar sweep scenarios/quarry-ledge.yaml --vary coilover.stop_nut.gap='0.8:2.4:9 in'",
            "quartercar sweep scenarios/quarry-ledge.yaml --vary coilover.stop_nut.gap='0.8:2.4:5 in' --vary coilover.preload='1:3:5 in' --goal up_travel_used:least --out out/sweep",
        ],
        See = ["compare", "reach", "gather"],
    };

    /// <summary>`reach`.</summary>
    public static readonly VerbHelp Reach = new("reach", "finds how far a value can go before a limit first breaks.")
    {
        About =
        [
            "Takes one range, PATH=FROM:TO, and goes from FROM toward TO: how high a ledge, how fast, how heavy. It tries 33 points, then halves the piece with the first break down to a thousandth of the range. A break between two points that hold is not seen. " + Limits,
            "A second --vary with values, --split or --setups asks the same for each setup. " + OneModel,
        ],
        Files =
        [
            new("reach.json", "The largest value that holds, what breaks first, every point that was tried."),
            new("report.html", "All of it on one page."),
            new("reach", "Picture, of several setups: how far each goes, .png and .svg."),
        ],
        Broken = "It ran and its results are there, but a setup could not be run at FROM.",
        Examples =
        [
            "quartercar reach scenarios/quarry-ledge.yaml --vary terrain[1].step='-8:-40 in'",
            "quartercar reach scenarios/quarry-ledge.yaml --vary terrain[1].step='-8:-40 in' --vary coilover.stop_nut.gap='0.8,1.6,2.4 in' --out out/reach",
        ],
        See = ["sweep", "compare"],
    };

    /// <summary>`tweak`.</summary>
    public static readonly VerbHelp Tweak = new("tweak", "tries one realistic step of each adjustable thing and ranks them.")
    {
        About =
        [
            "A turn of the coil nut, a quarter inch (5 mm) of stop nut or bump stop, a tenth of damping, 20 psi (1 bar) of gas, the next stiffer and the next softer spring of a list: each is run alone, both ways, from the setup as written, and ranked by what it does to the goal. Beside it stand its side effects, and what appears, vanishes or breaks. Two steps together need a run of their own.",
        ],
        Files =
        [
            new("tweak.json", "Every step: from, to, goal, change, side effects."),
            new("report.html", "All of it on one page."),
        ],
        Broken = "It ran and its results are there, but one of the steps could not be run.",
        Examples =
        [
            "quartercar tweak scenarios/quarry-ledge.yaml",
            "quartercar tweak scenarios/quarry-ledge.yaml --goal up_travel_used:least --json",
        ],
        See = ["compare", "sweep"],
    };

    /// <summary>`spread`.</summary>
    public static readonly VerbHelp Spread = new("spread", "shows how sure the figures are, given what is uncertain.")
    {
        About =
        [
            "Runs the scenario again and again with its uncertain values drawn from its 'tolerances' (by a Latin hypercube, which covers each range evenly), and gives how far the figures spread, how often something touches, and which uncertainty contributes how much.",
            "In the scenario: tolerances: { corner.sprung_weight: 4 % }. A plain width is the half-width that holds 95 of 100 (normal); { within: 2 %, shape: uniform } gives bounds.",
        ],
        Files =
        [
            new("spread.csv", "A row a sample: what was drawn, then every figure, in SI."),
            new("spread.json", "5th, 50th and 95th percentile, mean, shares of contacts and of variance."),
            new("report.html", "All of it on one page."),
            new("pictures", "spread and spread_shares, .png and .svg."),
        ],
        Broken = "It ran and its results are there, but a sample could not be run.",
        Examples = ["quartercar spread scenarios/quarry-ledge.yaml --set 'tolerances={ corner.sprung_weight: 4 %, coilover.preload: 0.125 in }' --samples 100 --out out/spread"],
        See = ["weigh", "gather"],
    };

    /// <summary>`gather`.</summary>
    public static readonly VerbHelp Gather = new("gather", "puts the parts of a study together.")
    {
        Usage = ["gather DIR... --out DIR [OPTIONS]"],
        About =
        [
            "compare, sweep and spread run a share of their setups with --part K/N, each share on another machine or at another time. This takes their folders, in any order, and writes the same files, byte for byte, as one run of the whole study writes. It says which part is missing, double, or of another study. A part keeps what it read, so nothing else is needed.",
        ],
        Files = [new("DIR", "The files of the study that was run in parts: see its page.")],
        Broken = SetupFailed,
        Examples =
        [
            "quartercar compare scenarios/quarry-ledge.yaml --vary coilover.preload='1,1.4,1.8 in' --part 1/2 --out out/part1",
            "quartercar compare scenarios/quarry-ledge.yaml --vary coilover.preload='1,1.4,1.8 in' --part 2/2 --out out/part2",
            "quartercar gather out/part1 out/part2 --out out/whole",
        ],
        See = ["compare", "sweep", "spread"],
    };
}
