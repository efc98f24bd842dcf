using System.Numerics;

namespace Sequencer.Language.Units;

/// <summary>An exact fraction, reduced, its denominator positive.</summary>
public readonly struct Rational : IEquatable<Rational>, IComparable<Rational>
{
    private readonly BigInteger _denominatorLessOne;

    public Rational(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero)
        {
            throw new ArgumentException("a fraction has no zero denominator", nameof(denominator));
        }

        BigInteger divisor = BigInteger.GreatestCommonDivisor(numerator, denominator);
        divisor = denominator.Sign < 0 ? -divisor : divisor;
        Numerator = numerator / divisor;
        _denominatorLessOne = (denominator / divisor) - 1;
    }

    public BigInteger Numerator { get; }

    public BigInteger Denominator => _denominatorLessOne + 1;

    public bool IsInteger => _denominatorLessOne.IsZero;

    public bool IsZero => Numerator.IsZero;

    public int Sign => Numerator.Sign;

    public static Rational Zero => default;

    public static implicit operator Rational(long value) => new(value, 1);

    public static Rational FromInt64(long value) => value;

    public static Rational operator +(Rational left, Rational right) =>
        new((left.Numerator * right.Denominator) + (right.Numerator * left.Denominator), left.Denominator * right.Denominator);

    public static Rational operator -(Rational left, Rational right) => left + -right;

    public static Rational operator -(Rational value) => new(-value.Numerator, value.Denominator);

    public static Rational operator *(Rational left, Rational right) =>
        new(left.Numerator * right.Numerator, left.Denominator * right.Denominator);

    public static Rational operator /(Rational left, Rational right) =>
        new(left.Numerator * right.Denominator, left.Denominator * right.Numerator);

    public static bool operator ==(Rational left, Rational right) => left.Equals(right);

    public static bool operator !=(Rational left, Rational right) => !left.Equals(right);

    public static bool operator <(Rational left, Rational right) => left.CompareTo(right) < 0;

    public static bool operator >(Rational left, Rational right) => left.CompareTo(right) > 0;

    public static bool operator <=(Rational left, Rational right) => left.CompareTo(right) <= 0;

    public static bool operator >=(Rational left, Rational right) => left.CompareTo(right) >= 0;

    public static Rational Add(Rational left, Rational right) => left + right;

    public static Rational Subtract(Rational left, Rational right) => left - right;

    public static Rational Multiply(Rational left, Rational right) => left * right;

    public static Rational Divide(Rational left, Rational right) => left / right;

    public static Rational Negate(Rational value) => -value;

    /// <summary>The largest fraction of which both are whole multiples (of positive fractions).</summary>
    public static Rational CommonMeasure(Rational left, Rational right) => new(
        BigInteger.GreatestCommonDivisor(left.Numerator * right.Denominator, right.Numerator * left.Denominator),
        left.Denominator * right.Denominator);

    /// <summary>The least integer that is not below the value.</summary>
    public BigInteger Ceiling() => -BigIntegerFloor(-Numerator, Denominator);

    /// <summary>The greatest integer that is not above the value.</summary>
    public BigInteger Floor() => BigIntegerFloor(Numerator, Denominator);

    /// <exception cref="OverflowException">The value is not a 64-bit integer.</exception>
    public long ToInt64() => IsInteger ? (long)Numerator : throw new OverflowException($"{this} is not an integer");

    public double ToDouble() => (double)Numerator / (double)Denominator;

    public int CompareTo(Rational other) => (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    public bool Equals(Rational other) => Numerator == other.Numerator && _denominatorLessOne == other._denominatorLessOne;

    public override bool Equals(object? obj) => obj is Rational other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(Numerator, _denominatorLessOne);

    public override string ToString() => IsInteger ? Numerator.ToString(System.Globalization.CultureInfo.InvariantCulture) : FormattableString.Invariant($"{Numerator}/{Denominator}");

    private static BigInteger BigIntegerFloor(BigInteger numerator, BigInteger denominator)
    {
        BigInteger quotient = BigInteger.DivRem(numerator, denominator, out BigInteger remainder);
        return remainder.Sign < 0 ? quotient - 1 : quotient;
    }
}
