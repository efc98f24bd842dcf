using Sequencer.Language.Parsing;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>
/// Sorts statements and checks their order (SEQ0120 to SEQ0127). What a malformed line may have been is
/// never reported as missing.
/// </summary>
internal sealed class OutlineReader
{
    private readonly DiagnosticBag _diagnostics;
    private readonly ProgramOutline _outline;
    private readonly HashSet<string?> _malformedKeywords = [];
    private SourceSpan? _language;
    private readonly Dictionary<ProceduralState, SourceSpan> _sections = [];
    private SourceSpan? _procedure;
    private ProceduralState _state = ProceduralState.Running;
    private StepOutline? _step;
    private bool _strayLineTold;

    private OutlineReader(SourceText source, DiagnosticBag diagnostics)
    {
        _outline = new ProgramOutline { Source = source };
        _diagnostics = diagnostics;
    }

    public static ProgramOutline Read(ParsedProgram program, DiagnosticBag diagnostics)
    {
        OutlineReader reader = new(program.Source, diagnostics);
        if (program.Statements.IsEmpty)
        {
            if (!diagnostics.HasErrors)
            {
                diagnostics.Add(StructureDiagnostics.NoProgram(program.Source.At(0, 0)));
            }

            return reader._outline;
        }

        foreach (PlacedStatement statement in program.Statements)
        {
            reader.Add(statement, new LinePlace(statement.Source, statement.Offset));
        }

        reader.CheckComplete(program);
        return reader._outline;
    }

    private void Add(PlacedStatement placed, LinePlace place)
    {
        switch (placed.Statement)
        {
            case MalformedLine line:
                AddMalformed(line);
                break;
            case LibrarySyntax or ModuleSyntax:
                _diagnostics.Add(StructureDiagnostics.Misplaced(place.At(placed.Statement), Word(placed.Statement, place), "modules stand in a library, a file of its own"));
                break;
            case LanguageSyntax language:
                AddLanguage(language, place);
                break;
            case UnitSyntax unit:
                AddUnit(unit, place);
                break;
            case ProcedureSyntax procedure:
                AddProcedure(place.At(procedure));
                break;
            case SectionSyntax section:
                AddSection(section, place);
                break;
            case StepSyntax step:
                _step = new StepOutline(new PlacedSyntax<StepSyntax>(step, place), placed.Documentation, _state);
                _outline.Steps.Add(_step);
                _strayLineTold = false;
                break;
            case StepLineSyntax line:
                AddStepLine(line, place);
                break;
            case JoinSyntax join:
                _outline.Joins.Add((new PlacedSyntax<JoinSyntax>(join, place), _outline.Steps.Count));
                _step = null;
                break;
            default:
                AddDeclaration(placed.Statement, place);
                break;
        }
    }

    private void AddLanguage(LanguageSyntax language, LinePlace place)
    {
        if (Once(ref _language, place.At(language), "language") && !language.Version.Value.Equals(Units.Rational.FromInt64(1)))
        {
            _diagnostics.Add(StructureDiagnostics.UnknownVersion(place.At(language.Version)));
        }
    }

    private void AddUnit(UnitSyntax unit, LinePlace place)
    {
        if (_outline.Unit is { } first)
        {
            _diagnostics.Add(StructureDiagnostics.OnlyOnce(place.At(unit), "unit", first.Place.At(first.Syntax)));
            return;
        }

        if (_outline.Declarations.Count > 0 || ProcedureHasBegun)
        {
            _diagnostics.Add(StructureDiagnostics.Misplaced(place.At(unit), "unit", "it comes before all declarations"));
        }

        _outline.Unit = new PlacedSyntax<UnitSyntax>(unit, place);
    }

    private void AddDeclaration(StatementSyntax statement, LinePlace place)
    {
        if (ProcedureHasBegun && place.At(statement).Source.Use is null)
        {
            _diagnostics.Add(StructureDiagnostics.Misplaced(place.At(statement), Word(statement, place), "declarations come before `procedure`"));
        }

        switch (statement)
        {
            case UseSyntax:
                break;
            case DeclarationSyntax declaration:
                _outline.Declarations.Add(new PlacedSyntax<DeclarationSyntax>(declaration, place));
                break;
            case OverrideSyntax waiver:
                _outline.Overrides.Add(new PlacedSyntax<OverrideSyntax>(waiver, place));
                break;
            case StartSyntax start:
                _outline.Starts.Add(new PlacedSyntax<StartSyntax>(start, place));
                break;
            case CalibrateSyntax calibrate:
                _outline.Calibrations.Add(new PlacedSyntax<CalibrateSyntax>(calibrate, place));
                break;
            case AskedSyntax asked:
                _outline.Asked.Add(new PlacedSyntax<AskedSyntax>(asked, place));
                break;
            case HeldLimitSyntax held when _outline.HeldLimit is { } first:
                _diagnostics.Add(StructureDiagnostics.OnlyOnce(place.At(held), "held at most", first.Place.At(first.Syntax)));
                break;
            case HeldLimitSyntax held:
                _outline.HeldLimit = new PlacedSyntax<HeldLimitSyntax>(held, place);
                break;
            case AdvanceSyntax advance when _outline.Advance is { } first:
                _diagnostics.Add(StructureDiagnostics.OnlyOnce(place.At(advance), "advance by hand", first.Place.At(first.Syntax)));
                break;
            case AdvanceSyntax advance:
                _outline.Advance = new PlacedSyntax<AdvanceSyntax>(advance, place);
                break;
            case RestartSyntax restart when _outline.Restart is { } first:
                _diagnostics.Add(StructureDiagnostics.OnlyOnce(place.At(restart), "after power loss", first.Place.At(first.Syntax)));
                break;
            case RestartSyntax restart:
                _outline.Restart = new PlacedSyntax<RestartSyntax>(restart, place);
                break;
            default:
                throw new System.Diagnostics.UnreachableException(statement.GetType().Name);
        }
    }

    private void AddProcedure(SourceSpan span)
    {
        Once(ref _procedure, span, "procedure");
        _state = ProceduralState.Running;
        _step = null;
    }

    private void AddSection(SectionSyntax section, LinePlace place)
    {
        SourceSpan span = place.At(section);
        _state = Sections.Of(section.Word.Text);
        _step = null;
        if (_procedure is null && !_malformedKeywords.Contains("procedure"))
        {
            _diagnostics.Add(StructureDiagnostics.Misplaced(span, section.Word.Text, "it comes after the steps of `procedure`"));
        }

        if (_sections.TryGetValue(_state, out SourceSpan first))
        {
            _diagnostics.Add(StructureDiagnostics.OnlyOnce(span, section.Word.Text, first));
        }

        _sections.TryAdd(_state, span);
    }

    private void AddStepLine(StepLineSyntax line, LinePlace place)
    {
        if (_step is null)
        {
            if (!_strayLineTold)
            {
                _diagnostics.Add(StructureDiagnostics.Misplaced(place.At(line), Word(line, place), "it belongs below a `step`"));
            }

            _strayLineTold = true;
            return;
        }

        _step.Lines.Add(new PlacedSyntax<StepLineSyntax>(line, place));
    }

    private static string Word(StatementSyntax statement, LinePlace place) => place.At(statement).Text.ToString().Split(' ', '\t', '\n')[0];

    private void AddMalformed(MalformedLine line)
    {
        _malformedKeywords.Add(line.Keyword);
        if (line.Keyword is "step" or "procedure")
        {
            _outline.StepsMayBeMissing |= line.Keyword == "step";
            _step = new StepOutline(null, string.Empty, _state) { HasMalformedLine = true };
            _outline.Steps.Add(_step);
            return;
        }

        if (_step is not null)
        {
            _step.HasMalformedLine = true;
        }

        if (!ProcedureHasBegun || line.Keyword == "prompt")
        {
            _outline.PoisonedNames.Add(line.Name?.Text);
        }
    }

    private void CheckComplete(ParsedProgram program)
    {
        PlacedStatement first = program.Statements[0];
        SourceSpan start = new LinePlace(first.Source, first.Offset).At(first.Statement);
        bool unclear = _malformedKeywords.Contains(null);
        if (first.Statement is not (LanguageSyntax or MalformedLine { Keyword: null or "language" }))
        {
            _diagnostics.Add(StructureDiagnostics.LanguageFirst(start) with { Fix = _language is null ? Fix.FirstLine(program.Source, "language 1") : null });
        }

        if (_outline.Unit is null && !unclear && !_malformedKeywords.Contains("unit"))
        {
            _diagnostics.Add(StructureDiagnostics.UnitMissing(_language ?? start));
        }

        if (_procedure is null && !unclear && !_malformedKeywords.Contains("procedure"))
        {
            _diagnostics.Add(StructureDiagnostics.ProcedureMissing(_outline.Steps.Count > 0 && _outline.Steps[0].Header is { } step
                ? step.Place.At(step.Syntax)
                : program.Source.At(program.Source.Content.Length, 0)));
        }
        else if (_procedure is { } procedure && !unclear)
        {
            CheckSteps(ProceduralState.Running, procedure);
        }

        if (!unclear)
        {
            foreach ((ProceduralState state, SourceSpan section) in _sections)
            {
                CheckSteps(state, section);
            }
        }
    }

    private void CheckSteps(ProceduralState state, SourceSpan header)
    {
        if (!_outline.Steps.Exists(step => step.State == state))
        {
            _diagnostics.Add(StructureDiagnostics.NoStep(header, Sections.Word(state)));
        }
    }

    private bool ProcedureHasBegun => _procedure is not null || _outline.Steps.Count > 0;

    private bool Once(ref SourceSpan? seen, SourceSpan span, string statement)
    {
        if (seen is { } first)
        {
            _diagnostics.Add(StructureDiagnostics.OnlyOnce(span, statement, first));
            return false;
        }

        seen = span;
        return true;
    }
}
