using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// SHA-256 of expressions by their structure alone: the operands of a commutative kind are taken in
/// the order of their digests, so that ids have no influence.
/// </summary>
internal sealed class ExpressionDigests
{
    private readonly Dictionary<Expression, byte[]> _digests = [];

    public ExpressionDigests(IEnumerable<Expression> roots)
    {
        foreach (Expression expression in ExpressionGraph.InOrder(roots))
        {
            _digests[expression] = Digest(expression);
        }
    }

    public string Of(Expression root) => Convert.ToHexStringLower(_digests[root]);

    private byte[] Digest(Expression expression)
    {
        byte[][] operands = [.. expression.Operands.Select(operand => _digests[operand])];
        if (expression.Kind is ExpressionKind.And or ExpressionKind.Or or ExpressionKind.Equal or ExpressionKind.Add)
        {
            Array.Sort(operands, static (left, right) => left.AsSpan().SequenceCompareTo(right));
        }

        byte[] value = new byte[sizeof(long)];
        BinaryPrimitives.WriteInt64LittleEndian(value, expression.Value);
        byte[] name = Encoding.UTF8.GetBytes($"{expression.Kind} {expression.Sort} {operands.Length} {expression.Variable?.Name}\0");
        return SHA256.HashData([.. name, .. value, .. operands.SelectMany(static digest => digest)]);
    }
}
