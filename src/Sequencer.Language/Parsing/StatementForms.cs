using System.Collections.Immutable;

namespace Sequencer.Language.Parsing;

/// <summary>How a sound statement looks, picked by the words that a broken one holds.</summary>
internal static class StatementForms
{
    /// <summary>A statement's first word, a word that marks a form of its own, and that form.</summary>
    private static readonly ImmutableArray<(string Keyword, string Mark, string Form)> Special =
    [
        ("input", "switch", "input YS101 switch normally closed at %IX0.3 \"Feed pump running\" on after 0.5 s"),
        ("input", "usable", "input AT101 0 .. 14.00 pH at %IW2 \"Reaction pH\" usable only while FS120"),
        ("output", "rate", "output SC221 0 .. 100.0 % at %QW0 \"Drum speed\" safe 0.0 %, rate at most 5.0 % in 1 s"),
        ("output", "confirm", "output XV101 valve at %QX0.0 \"Inlet\" safe closed, confirm ZSO101, ZSC101 within 8 s"),
        ("output", "delivers", "output P201 motor at %QX0.2 \"Caustic pump\" safe stopped, delivers CAUSTIC at 0.20 L/min"),
        ("output", "driven", "output XV206 valve at %QX0.6 \"Line flush\" safe closed, driven while holding or stopping"),
        ("output", "while", "output AG110 motor at %QX0.1 \"Agitator\" safe running while LT101 > 0.500 m3 else stopped if bad running"),
        ("interlock", "exclusive", "interlock I3 \"Reagents apart\" P201, P202 exclusive, 60 s between"),
        ("interlock", "from", "interlock I1 \"Overfill\" XV101 blocked from LSHH101 until LT101 < 5.300 m3 and reset"),
        ("interlock", "unless", "interlock I2 \"Unmixed\" P201 blocked unless YS110"),
        ("permissive", "else", "permissive I4 \"Valve first\" P101 starts only with ZSO101, else after 15 s hold"),
        ("trip", "group", "trip T2 \"Mixing lost\" when not YS110, on after 8 s, then hold, group MIXING"),
        ("trip", "bad", "trip T2 \"Mixing lost\" when not YS110 stays 8 s then hold, if bad hold"),
        ("voted", "bad", "voted LHH \"Level high\" 2oo3 of LT1 > 5.0 m3, LT2 > 5.0 m3, LT3 > 5.0 m3, if bad fewer votes, differ for 30 s"),
        ("count", "over", "count OUT24 \"Let out in 24 h\" 0 .. 100.000 m3 each rising FQ440 adds 0.010 m3, over 24 h in 24 parts"),
        ("start", "asked", "start asked by TK201"),
        ("alarm", "priority", "alarm A1 \"Level high\" when LT101 > 5.2 m3 deadband 0.1 m3 priority high consequence \"Overflow\" response \"Close the inlet\" within 10 min"),
        ("assume", "never", "assume A2 \"Switch and level agree\" never LSHH101 and LT101 < 1.000 m3"),
        ("assume", "monitored", "assume A1 \"Filling rate\" LT101 rises at most 0.40 m3/min, monitored, else hold"),
        ("require", "everything", "require H3 \"Emergency stop\" after ES001 everything at its emergency value within 1 scan"),
        ("require", "after", "require H4 \"Valve shuts\" after LSHH101 XV101 closed within 2 s"),
        ("require", "always", "require H5 \"Mixing\" always AG110 proved while LT101 > 0.500 m3"),
        ("step", "only", "step 900 \"Flush the line\" only if LIME_IN_LINE"),
        ("limit", "go", "limit 30 min then go 90 \"Filling slow\""),
        ("go", "times", "go 30 when S1, at most 5 times then hold \"Turned too often\""),
        ("go", "within", "go 30 when AT101 within 7.00 .. 8.50 stays 60 s after the last pulse"),
        ("dose", "per", "dose P106 amount 2.0 L per m3 of LT101, at most 12 L a batch"),
        ("dose", "amount", "dose P202 amount 3.0 L once a batch"),
        ("run", "once", "run P101 for 20 s once a batch"),
        ("run", "each", "run M223 for 2 s at each rising SS221"),
        ("run", "for", "run P101 after 5 s for 20 min"),
        ("run", "while", "run P101 while ZSO101 until LT101 > 5.000 m3"),
        ("open", "for", "open XV101 after 5 s for 20 min"),
        ("open", "while", "open XV101 while YS101 until LT101 > 5.000 m3"),
    ];

    public static string Of(ImmutableArray<Token> tokens)
    {
        string keyword = tokens[0].Text;
        foreach ((string first, string mark, string form) in Special)
        {
            if (first == keyword && tokens.Any(token => token.Kind == TokenKind.Word && token.Text == mark))
            {
                return form;
            }
        }

        return StatementWords.Forms[keyword];
    }
}
