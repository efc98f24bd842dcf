using System.CommandLine;

namespace Sequencer.Cli.Commands;

/// <summary>Arguments and options that commands share.</summary>
internal static class SiteArguments
{
    public static Argument<string> Site() => new("SITE") { Description = "the site's folder, the one with site.yaml in it" };

    public static Option<string> Output() => new("--out")
    {
        Description = "the folder for results; made if it is missing, and nothing in it that we did not make is overwritten",
        HelpName = "FOLDER",
        Required = true,
    };

    public static Option<bool> Json() => new("--json") { Description = "print JSON for machines in place of text" };
}
