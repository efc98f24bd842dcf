using System.Collections.Immutable;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>
/// Text to statements, line by line; a malformed line is told once and the rest is read on.
/// Reports SEQ01xx.
/// </summary>
internal static class ProgramParser
{
    public static ParsedProgram Parse(SourceText source, ParseCache cache, DiagnosticBag diagnostics)
    {
        ImmutableArray<PlacedStatement>.Builder statements = ImmutableArray.CreateBuilder<PlacedStatement>();
        if (source.Content.Length > ProgramLimits.FileBytes)
        {
            diagnostics.Add(TextDiagnostics.FileTooLarge(source.At(0, 0), source.Content.Length, ProgramLimits.FileBytes));
            return new ParsedProgram(source, [], false);
        }

        LogicalLineReader reader = new(source.Content);
        int malformed = 0;
        for (LogicalLine? line = reader.Next(); line is not null; line = reader.Next())
        {
            StatementSyntax? statement = Read(source, line, cache);
            if (statement is not null)
            {
                statements.Add(new PlacedStatement(source, line.Span.Start, statement, line.Documentation));
            }

            LineFault? fault = statement is MalformedLine broken ? broken.Fault : line.Fault;
            if (fault is null)
            {
                continue;
            }

            TextSpan place = fault.Span.Shift(line.Span.Start);
            diagnostics.Add(fault.Describe(source.At(place.Start, place.Length)));
            malformed++;
            if (malformed == ProgramLimits.MalformedLines)
            {
                diagnostics.Add(ParseDiagnostics.TooManyMistakes(source.At(line.Span.End, 0), malformed));
                return new ParsedProgram(source, statements.ToImmutable(), false);
            }
        }

        return new ParsedProgram(source, statements.ToImmutable(), true);
    }

    /// <summary>Null where only a comment is at fault.</summary>
    private static StatementSyntax? Read(SourceText source, LogicalLine line, ParseCache cache)
    {
        ReadOnlySpan<char> text = source.Content.AsSpan(line.Span.Start, line.Span.Length);
        if (line.Fault is null)
        {
            return cache.Parse(text);
        }

        return text.StartsWith("--") ? null : StatementParser.Unreadable(text[..Math.Min(text.Length, ProgramLimits.LineCharacters)].ToString(), line.Fault);
    }
}
