using System.Text.RegularExpressions;
using Sequencer.Export.Writing;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.ExportedText;

/// <summary>
/// Nobody has to know which operator binds tighter: where two different ones meet there is a bracket. NOT counts as one, a sign does not.
/// </summary>
public sealed partial class BracketTests
{
    private static readonly HashSet<string> Operators = ["**", "*", "/", "MOD", "+", "-", "<", ">", "<=", ">=", "=", "<>", "AND", "&", "XOR", "OR"];

    /// <summary>What an expression cannot go on through.</summary>
    private static readonly HashSet<string> Ends = [",", ";", ":", ":=", "=>", "..", "IF", "ELSIF", "THEN", "ELSE", "CASE", "OF"];

    [Theory]
    [InlineData("quillgate")]
    [InlineData("marlpit-wharf")]
    [InlineData("fernhollow")]
    [InlineData("sedgemere")]
    public void Different_operators_never_meet_without_a_bracket(string name)
    {
        LoadedSite site = SiteLoader.Load(new SiteFolder(RepositoryPath.Site(name)), new DiagnosticBag()) ?? throw new InvalidOperationException("the site does not check");
        Assert.Empty(Mixed(ExportStage.Write(site, TextDialect.Default).Text));
    }

    [Theory]
    [InlineData("a := b AND c OR d;", 1)]
    [InlineData("a := b AND NOT c;", 1)]
    [InlineData("a := NOT b = c;", 1)]
    [InlineData("a := b - c + d;", 1)]
    [InlineData("IF a >= 1 AND b THEN c := 2; END_IF;", 1)]
    [InlineData("f(x := a + b, y := c - d); g := (a AND b) OR (NOT c);", 0)]
    [InlineData("a := b + c + -1; d := NOT e; (* a AND b OR c *)", 0)]
    public void And_where_they_do_it_is_seen(string text, int times) => Assert.Equal(times, Mixed(text).Count);

    private static List<string> Mixed(string text)
    {
        List<string> found = [];
        Stack<string?> around = new([null]);
        string before = "";
        int line = 1;
        foreach (Match match in Token().Matches(text))
        {
            string token = match.Value;
            line += token.Count(letter => letter == '\n');
            if (match.Groups["token"].Success)
            {
                bool isBinary = Operators.Contains(token) && (before is ")" || (char.IsAsciiLetterOrDigit(before.LastOrDefault()) && !Operators.Contains(before) && !Ends.Contains(before) && before != "NOT"));
                if (token == "(")
                {
                    around.Push(null);
                }
                else if (token == ")")
                {
                    around.Pop();
                }
                else if (Ends.Contains(token))
                {
                    around.Pop();
                    around.Push(null);
                }
                else if (isBinary || token == "NOT")
                {
                    string? other = around.Pop();
                    around.Push(token);
                    if (other is not null && other != token)
                    {
                        found.Add($"line {line}: {other} and {token}");
                    }
                }

                before = token;
            }
        }

        return found;
    }

    [GeneratedRegex(@"\s+|\(\*.*?\*\)|(?<token>T#[0-9a-z_.]+|%\w+[0-9.]*|\w+|:=|=>|<=|>=|<>|\*\*|\.\.|\S)", RegexOptions.Singleline)]
    private static partial Regex Token();
}
