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
    private readonly ExpressionDigests? _known;
    private byte[] _text = new byte[1024];

    /// <param name="roots">Of these and all that they are made of.</param>
    /// <param name="known">Digests worked out before; it is only read.</param>
    public ExpressionDigests(IEnumerable<Expression> roots, ExpressionDigests? known = null)
    {
        _known = known;
        foreach (Expression expression in ExpressionGraph.InOrder(roots.Where(root => !Knows(root))))
        {
            if (!Knows(expression))
            {
                _digests[expression] = Digest(expression);
            }
        }
    }

    public string Of(Expression root) => Convert.ToHexStringLower(DigestOf(root));

    private bool Knows(Expression expression) => _known?._digests.ContainsKey(expression) == true;

    private byte[] DigestOf(Expression expression) => _known?._digests.TryGetValue(expression, out byte[]? digest) == true ? digest : _digests[expression];

    private byte[] Digest(Expression expression)
    {
        byte[][] operands = new byte[expression.Operands.Length][];
        for (int index = 0; index < operands.Length; index++)
        {
            operands[index] = DigestOf(expression.Operands[index]);
        }

        if (expression.Kind is ExpressionKind.And or ExpressionKind.Or or ExpressionKind.Equal or ExpressionKind.Add)
        {
            Array.Sort(operands, static (left, right) => left.AsSpan().SequenceCompareTo(right));
        }

        byte[] name = Encoding.UTF8.GetBytes($"{expression.Kind} {expression.Sort} {operands.Length} {expression.Variable?.Name}\0");
        int length = name.Length + sizeof(long) + (operands.Length * SHA256.HashSizeInBytes);
        if (_text.Length < length)
        {
            _text = new byte[2 * length];
        }

        name.CopyTo(_text, 0);
        BinaryPrimitives.WriteInt64LittleEndian(_text.AsSpan(name.Length), expression.Value);
        int end = name.Length + sizeof(long);
        foreach (byte[] operand in operands)
        {
            operand.CopyTo(_text, end);
            end += SHA256.HashSizeInBytes;
        }

        return SHA256.HashData(_text.AsSpan(0, length));
    }
}
