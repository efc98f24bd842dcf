namespace Sequencer.Proof.DecisionDiagrams;

internal sealed partial class Diagrams
{
    public int And(int left, int right)
    {
        if (left == False || right == False || (left ^ 1) == right)
        {
            return False;
        }

        if (left == True || left == right)
        {
            return right;
        }

        if (right == True)
        {
            return left;
        }

        if (left > right)
        {
            (left, right) = (right, left);
        }

        if (IsKnown(Operation.And, left, right, 0, out int place))
        {
            return _cache[place].Result;
        }

        int level = Math.Min(LevelOf(left), LevelOf(right));
        int high = And(HighAt(left, level), HighAt(right, level));
        int low = And(LowAt(left, level), LowAt(right, level));
        return Remember(Operation.And, left, right, 0, Make(level, high, low));
    }

    public int Or(int left, int right) => And(left ^ 1, right ^ 1) ^ 1;

    public int ExclusiveOr(int left, int right)
    {
        int negated = (left ^ right) & 1;
        left &= ~1;
        right &= ~1;
        if (left == right)
        {
            return False ^ negated;
        }

        if (left > right)
        {
            (left, right) = (right, left);
        }

        if (left == True)
        {
            return right ^ 1 ^ negated;
        }

        if (IsKnown(Operation.ExclusiveOr, left, right, 0, out int place))
        {
            return _cache[place].Result ^ negated;
        }

        int level = Math.Min(LevelOf(left), LevelOf(right));
        int high = ExclusiveOr(HighAt(left, level), HighAt(right, level));
        int low = ExclusiveOr(LowAt(left, level), LowAt(right, level));
        return Remember(Operation.ExclusiveOr, left, right, 0, Make(level, high, low)) ^ negated;
    }

    public int Choice(int condition, int then, int otherwise)
    {
        if ((condition & 1) != 0)
        {
            (condition, then, otherwise) = (condition ^ 1, otherwise, then);
        }

        if (condition == True || then == otherwise)
        {
            return then;
        }

        if (then >> 1 == 0 || then >> 1 == condition >> 1)
        {
            return then == True || then == condition ? Or(condition, otherwise) : And(condition ^ 1, otherwise);
        }

        if (otherwise >> 1 == 0 || otherwise >> 1 == condition >> 1)
        {
            return otherwise == False || otherwise == condition ? And(condition, then) : Or(condition ^ 1, then);
        }

        int negated = then & 1;
        then ^= negated;
        otherwise ^= negated;
        if (then == (otherwise ^ 1))
        {
            return ExclusiveOr(condition, otherwise) ^ negated;
        }

        if (IsKnown(Operation.Choice, condition, then, otherwise, out int place))
        {
            return _cache[place].Result ^ negated;
        }

        int level = Math.Min(LevelOf(condition), Math.Min(LevelOf(then), LevelOf(otherwise)));
        int high = Choice(HighAt(condition, level), HighAt(then, level), HighAt(otherwise, level));
        int low = Choice(LowAt(condition, level), LowAt(then, level), LowAt(otherwise, level));
        return Remember(Operation.Choice, condition, then, otherwise, Make(level, high, low)) ^ negated;
    }

    /// <summary>
    /// Whether some values of the variables in the cube (a conjunction of variables) make both true: the conjunction never
    /// gets made as a whole (Burch, Clarke, Long, "Symbolic model checking with partitioned transition relations", VLSI 1991).
    /// </summary>
    public int AndExists(int left, int right, int cube)
    {
        if (left == False || right == False || (left ^ 1) == right)
        {
            return False;
        }

        if (left == True && right == True)
        {
            return True;
        }

        if (left > right)
        {
            (left, right) = (right, left);
        }

        int level = Math.Min(LevelOf(left), LevelOf(right));
        while (LevelOf(cube) < level)
        {
            cube = High(cube);
        }

        if (cube == True)
        {
            return And(left, right);
        }

        if (IsKnown(Operation.AndExists, left, right, cube, out int place))
        {
            return _cache[place].Result;
        }

        bool gone = LevelOf(cube) == level;
        int below = gone ? High(cube) : cube;
        int high = AndExists(HighAt(left, level), HighAt(right, level), below);
        if (gone && high == True)
        {
            return Remember(Operation.AndExists, left, right, cube, True);
        }

        int low = AndExists(LowAt(left, level), LowAt(right, level), below);
        return Remember(Operation.AndExists, left, right, cube, gone ? Or(high, low) : Make(level, high, low));
    }

    /// <summary>
    /// The function with each variable replaced by the one above it. Where the function depends on none of those above, the
    /// order of its variables stays.
    /// </summary>
    public int RaiseByOne(int root)
    {
        if (root >> 1 == 0)
        {
            return root;
        }

        int negated = root & 1;
        root ^= negated;
        if (IsKnown(Operation.Rename, root, 0, 0, out int place))
        {
            return _cache[place].Result ^ negated;
        }

        int high = RaiseByOne(High(root));
        int low = RaiseByOne(Low(root));
        return Remember(Operation.Rename, root, 0, 0, Make(LevelOf(root) - 1, high, low)) ^ negated;
    }

    /// <summary>
    /// A function, small if possible, that is the given one wherever the care set holds (Coudert and Madre, "A unified
    /// framework for the formal verification of sequential circuits", ICCAD 1990: "restrict").
    /// </summary>
    public int Restrict(int root, int care)
    {
        if (care == True || root >> 1 == 0)
        {
            return root;
        }

        if (root >> 1 == care >> 1)
        {
            return root == care ? True : False;
        }

        int negated = root & 1;
        root ^= negated;
        if (IsKnown(Operation.Restrict, root, care, 0, out int place))
        {
            return _cache[place].Result ^ negated;
        }

        int level = LevelOf(root);
        int result;
        if (LevelOf(care) < level)
        {
            result = Restrict(root, Or(High(care), Low(care)));
        }
        else
        {
            int careHigh = HighAt(care, level);
            int careLow = LowAt(care, level);
            result = careHigh == False ? Restrict(Low(root), careLow)
                : careLow == False ? Restrict(High(root), careHigh)
                : Make(level, Restrict(High(root), careHigh), Restrict(Low(root), careLow));
        }

        return Remember(Operation.Restrict, root, care, 0, result) ^ negated;
    }

    private int HighAt(int edge, int level) => LevelOf(edge) == level ? High(edge) : edge;

    private int LowAt(int edge, int level) => LevelOf(edge) == level ? Low(edge) : edge;

    private bool IsKnown(Operation operation, int first, int second, int third, out int place)
    {
        place = Place(operation, first, second, third);
        ref CacheEntry entry = ref _cache[place];
        if (entry.First == first && entry.Second == second && entry.Third == third && entry.Operation == operation)
        {
            return true;
        }

        CountStep();
        return false;
    }

    private int Remember(Operation operation, int first, int second, int third, int result)
    {
        _cache[Place(operation, first, second, third)] = new CacheEntry { Operation = operation, First = first, Second = second, Third = third, Result = result };
        return result;
    }

    private int Place(Operation operation, int first, int second, int third) =>
        (int)(Mix((uint)first, (uint)second, (uint)third + ((uint)operation * 0x27D4EB2Fu)) & (uint)(_cache.Length - 1));
}
