namespace QuarterCar.Cli.Help;

/// <summary>Verbs that ask about one corner.</summary>
internal static partial class HelpTexts
{
    /// <summary>`new`.</summary>
    public static readonly VerbHelp New = new("new", "writes a commented scenario to start from.")
    {
        About =
        [
            "The file holds every key that a scenario may have, each with a line that says what it is and what is taken where it is left out. Some keys stand behind a # and are not read until it is taken away; other optional ones, like gas, damper and stop nut, hold examples: change them or take them out. The file passes check as it is: change its values one by one.",
            "A file that is there already is never overwritten.",
        ],
        Files = [new("FILE", "The scenario.")],
        Interrupted = "Interrupted by Ctrl-C.",
        Examples = ["quartercar new my-corner.yaml"],
        See = ["check", "run", "schema"],
    };

    /// <summary>`check`.</summary>
    public static readonly VerbHelp Check = new("check", "shows how the corner stands, without a run.")
    {
        About =
        [
            "Gives ride height as shaft showing (what is left of the stroke), primary and secondary rate, crossover, room before a spring binds, fit on the body, frequencies, damping ratios, every load case beside the scenario as written, and warnings, each with what to do.",
            "Nothing moves: for what an obstacle does, use run.",
        ],
        Files =
        [
            new("curve.csv", "Standing force and rate over travel, from full droop to full bump."),
            new("force_travel", "Picture: force over shaft showing, .png and .svg."),
            new("rates", "Picture: rate over shaft showing, .png and .svg."),
        ],
        Examples =
        [
            "quartercar check scenarios/quarry-ledge.yaml",
            "quartercar check scenarios/quarry-ledge.yaml --case 'two up and fuel'",
            "quartercar check scenarios/quarry-ledge.yaml --set coilover.preload='1.8 in' --nut stays --json",
        ],
        See = ["run", "sheet", "weigh", "pick"],
    };

    /// <summary>`run`.</summary>
    public static readonly VerbHelp Run = new("run", "drives the corner over its course, or drops it.")
    {
        About =
        [
            "Starts at rest at ride height (a drop: in the air at full droop) and computes the motion to the end of run.duration, every contact and every change of rate found in time. Says in a sentence how much of the stroke it uses and what touches, then gives the figures, the contacts, the limits that the scenario sets, and warnings.",
        ],
        Files =
        [
            new("report.html", "All of it on one page, with the pictures; needs no network."),
            new("summary.json", "Every figure, in SI with the unit in the key."),
            new("events.csv", "What met what, when, how fast and how hard."),
            new("trace.csv", "A row every run.sample: travel, velocities, every force."),
            new("pictures", "shaft_travel, force_travel, damper, travel_use, tyre_load, acceleration; over more than 30 m of ground also spectrum and response_spectra; each .png and .svg."),
            new("", EarlierResults),
        ],
        Done = "Done; every limit of the scenario holds.",
        Broken = "It ran and its results are there, but a limit of the scenario is broken.",
        Examples =
        [
            "quartercar run scenarios/quarry-ledge.yaml --out out/quarry-ledge",
            "quartercar run scenarios/quarry-ledge.yaml --set speed='8 mph' --units si",
        ],
        See = ["check", "compare", "serve"],
    };

    /// <summary>`weigh`.</summary>
    public static readonly VerbHelp Weigh = new("weigh", "weighs a corner by its own springs.")
    {
        Usage =
        [
            "weigh --lower-rate RATE --lower-free LENGTH --lower-loaded LENGTH [OPTIONS]",
            "weigh --file MEASURED.yaml [OPTIONS]",
        ],
        About =
        [
            "A spring of known rate is a scale: rate times compression is the load it carries. Takes each spring's rate, free length and length with the vehicle standing, and gives the load on the coilover with its uncertainty. A single spring is the lower one; with an upper and a tender spring their readings are held against each other, because springs of one stack carry the same load.",
            "Two readings of a length, settled from below and from above, show the friction. With a motion ratio it gives the sprung weight at the wheel; with gas, shaft showing and stroke the share of the gas. A file weighs several corners and compares left with right.",
        ],
        Examples =
        [
            "quartercar weigh --file scenarios/measured/buggy-corners.yaml",
            "quartercar weigh --lower-rate '39 N/mm' --lower-free '356 mm' --lower-loaded '302 mm,301 mm'",
            "quartercar weigh --upper-rate '160 lbf/in' --upper-free '12 in' --upper-loaded '8.5 in' --lower-rate '225 lbf/in' --lower-free '14 in' --lower-loaded '11.5 in,11.4 in' --motion-ratio 0.94",
        ],
        See = ["pick", "check"],
    };

    /// <summary>`pick`.</summary>
    public static readonly VerbHelp Pick = new("pick", "picks springs for a load and a ride height from a list.")
    {
        Usage = ["pick --load FORCE --stroke LENGTH --ride-height LENGTH [OPTIONS]"],
        About =
        [
            "Goes through every pair of the list whose upper spring is no stiffer than the lower (with --tenders also with each tender above it) and gives for each set the preload that stands at the wanted ride height, the rates before and after the crossover, the ride heights that the thread reaches, and the room before a spring binds. Ranks " + Model.Selection.Pick.Ranking + ".",
            "A spring list is CSV with a header: rate_<unit>, free_length_<unit>, solid_length_<unit>, optionally name, inner_diameter_<unit>, wire_diameter_<unit>, mean_diameter_<unit>. The list that ships is invented: to try things out with, not to be bought from.",
        ],
        Examples =
        [
            "quartercar pick --load '760 lbf' --stroke '12 in' --ride-height '5 in' --gap '1.25 in'",
            "quartercar pick --load '3500 N' --stroke '300 mm' --ride-height '130 mm' --tenders invented --json",
        ],
        See = ["weigh", "check", "compare"],
    };

    /// <summary>`terrain`.</summary>
    public static readonly VerbHelp Terrain = new("terrain", "shows how rough a course or a measured profile is.")
    {
        About =
        [
            "Gives the ISO 8608 class (how strong the ground's waves are, from A, smooth, to H), the International Roughness Index (how much a standard car's suspension moves a kilometre) and the steepest slope. Both describe ground that is rough all along: of a single obstacle they say little, and a warning says so.",
        ],
        Files =
        [
            new("terrain.csv", "Ground over distance, and the road that the tyre's contact feels where the scenario names one."),
            new("terrain", "Picture: the course, .png and .svg."),
            new("spectrum", "Picture: its spectrum between the class limits, .png and .svg."),
        ],
        Examples =
        [
            "quartercar terrain scenarios/farm-track.csv",
            "quartercar terrain scenarios/gravel-lane.yaml --set terrain[1].random.iso8608=E --json",
        ],
        See = ["run"],
    };

    /// <summary>`sheet`.</summary>
    public static readonly VerbHelp Sheet = new("sheet", "writes the setup sheet, one page to print for the person with the wrench.")
    {
        About =
        [
            "One page, A4 or Letter: what to set by tape and wrench, in which order, with which caution, in both unit systems, the coilover to scale, and blanks for what was found. Print it from a browser.",
        ],
        Files = [new("FILE.html", "The sheet. An earlier sheet of that name is replaced; any other file is left alone, with a message.")],
        Examples =
        [
            "quartercar sheet scenarios/quarry-ledge.yaml --out out/sheet.html",
            "quartercar sheet scenarios/quarry-ledge.yaml --case 'two up and fuel' --out out/loaded.html",
        ],
        See = ["check", "weigh"],
    };
}
