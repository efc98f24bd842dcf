using System.Collections.Immutable;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;

namespace Sequencer.StructuredText.Lowering;

/// <summary>What variables begin with: one number for each elementary variable in them. What is wrong is reported, and the type's own first value taken.</summary>
internal static class FirstValues
{
    public static ImmutableArray<long> Of(LoweringContext context, ExpressionSyntax syntax, DataType type, BlockInstance? frame)
    {
        switch (syntax)
        {
            case ArrayValueSyntax array when type.Family == TypeFamily.Array:
                return Array(context, array, type, frame);
            case StructureValueSyntax structure when type.Family == TypeFamily.Structure:
                return Structure(context, structure, type, frame);
            case ArrayValueSyntax or StructureValueSyntax:
                context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(syntax.Span, type.Name, syntax is ArrayValueSyntax ? "values of an array" : "values of a structure"));
                return type.Defaults;
            default:
                break;
        }

        if (type.IsCompound)
        {
            context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(syntax.Span, type.Family == TypeFamily.Array ? "values in `[ ]`" : "values in `( )`, each with its name", "one value"));
            return type.Defaults;
        }

        return new ExpressionLowering(context).Constant(syntax, frame, type) is { } value ? [value.Value.Value] : type.Defaults;
    }

    private static ImmutableArray<long> Array(LoweringContext context, ArrayValueSyntax syntax, DataType type, BlockInstance? frame)
    {
        DataType element = type.Element!;
        ImmutableArray<long>.Builder values = ImmutableArray.CreateBuilder<long>();
        foreach (ArrayPartSyntax part in syntax.Parts)
        {
            ImmutableArray<long> one = part.Value is null ? element.Defaults : Of(context, part.Value, element, frame);
            if ((Int128)part.Times * one.Length > type.Defaults.Length - values.Count)
            {
                int elements = type.Defaults.Length / element.Defaults.Length;
                context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(part.Span, FormattableString.Invariant($"at most {elements} values in all"), "more"));
                return type.Defaults;
            }

            for (long turn = 0; turn < part.Times; turn++)
            {
                values.AddRange(one);
            }
        }

        values.AddRange(type.Defaults.Skip(values.Count));
        return values.ToImmutable();
    }

    private static ImmutableArray<long> Structure(LoweringContext context, StructureValueSyntax syntax, DataType type, BlockInstance? frame)
    {
        ImmutableArray<long>.Builder values = type.Defaults.ToBuilder();
        foreach (ArgumentSyntax member in syntax.Members)
        {
            int place = 0;
            (string Name, DataType Type)? found = null;
            foreach ((string name, DataType field) in type.Fields)
            {
                if (string.Equals(name, member.Name?.Text, StringComparison.OrdinalIgnoreCase))
                {
                    found = (name, field);
                    break;
                }

                place += field.Defaults.Length;
            }

            if (found is not { } known)
            {
                context.Diagnostics.Add(StructuredTextDiagnostics.NoSuchMember(member.Span, member.Name?.Text ?? "member", type.Name));
                continue;
            }

            foreach (long value in Of(context, member.Value, known.Type, frame))
            {
                values[place++] = value;
            }
        }

        return values.ToImmutable();
    }
}
