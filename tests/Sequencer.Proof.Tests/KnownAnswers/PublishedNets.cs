using System.Numerics;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Tests.KnownAnswers;

/// <summary>
/// Parametrised nets of the literature, with a requirement that holds, and how many markings each reaches. The numbers of the Model
/// Checking Contest (mcc.lip6.fr) are from memory; beside each stands the closed formula they agree with and why it is one.
/// </summary>
internal static class PublishedNets
{
    /// <summary>
    /// Contest model Philosophers: one fork, then the other, in any order. 3 to the n (243 for 5, 59,049 for 10): each fork lies
    /// or is held on either side, and who thinks, has one or eats follows from the forks.
    /// </summary>
    public static TransitionSystem Philosophers(int count)
    {
        PetriNet net = new();
        int[] think = net.Places("think", count, true);
        int[] fork = net.Places("fork", count, true);
        int[] left = net.Places("left", count);
        int[] right = net.Places("right", count);
        int[] eat = net.Places("eat", count);
        for (int self = 0; self < count; self++)
        {
            int other = fork[(self + 1) % count];
            net.Transition([think[self], fork[self]], [left[self]]);
            net.Transition([think[self], other], [right[self]]);
            net.Transition([left[self], other], [eat[self]]);
            net.Transition([right[self], fork[self]], [eat[self]]);
            net.Transition([eat[self]], [think[self], fork[self], other]);
        }

        return net.ToSystem(eat[0], eat[1]);
    }

    /// <summary>
    /// The philosophers of Ciardo, Luettgen and Siminiceanu ("Saturation", TACAS 2001; 1.86e6 for 10, from memory), who
    /// wait for both forks at once and take each when it lies there. The Lucas number of 3n: going round the table, whether a fork
    /// is taken gives the matrix (3 2; 2 1), whose eigenvalues are the third powers of the golden ratio and its conjugate.
    /// </summary>
    public static TransitionSystem WaitingPhilosophers(int count)
    {
        PetriNet net = new();
        int[] idle = net.Places("idle", count, true);
        int[] fork = net.Places("fork", count, true);
        int[] waitLeft = net.Places("wait_left", count);
        int[] waitRight = net.Places("wait_right", count);
        int[] left = net.Places("left", count);
        int[] right = net.Places("right", count);
        for (int self = 0; self < count; self++)
        {
            int other = fork[(self + 1) % count];
            net.Transition([idle[self]], [waitLeft[self], waitRight[self]]);
            net.Transition([waitLeft[self], fork[self]], [left[self]]);
            net.Transition([waitRight[self], other], [right[self]]);
            net.Transition([left[self], right[self]], [idle[self], fork[self], other]);
        }

        return net.ToSystem(right[0], left[1]);
    }

    public static BigInteger Lucas(int index)
    {
        (BigInteger now, BigInteger next) = (2, 1);
        for (int step = 0; step < index; step++)
        {
            (now, next) = (next, now + next);
        }

        return now;
    }

    /// <summary>
    /// Contest model Dekker: raise the flag; withdraw it if another's is up; enter if none is. 2 to the (n - 1) times (n + 2)
    /// (6,144 for 10): nobody inside and each with or without flag, or one of n inside.
    /// </summary>
    public static TransitionSystem Dekker(int count)
    {
        PetriNet net = new();
        int[] outside = net.Places("outside", count, true);
        int[] down = net.Places("down", count, true);
        int[] trying = net.Places("trying", count);
        int[] up = net.Places("up", count);
        int[] inside = net.Places("inside", count);
        for (int self = 0; self < count; self++)
        {
            int[] others = [.. Enumerable.Range(0, count).Where(other => other != self)];
            int[] othersDown = [.. others.Select(other => down[other])];
            net.Transition([outside[self], down[self]], [trying[self], up[self]]);
            net.Transition([trying[self], .. othersDown], [inside[self], .. othersDown]);
            net.Transition([inside[self], up[self]], [outside[self], down[self]]);
            foreach (int other in others)
            {
                net.Transition([trying[self], up[self], up[other]], [outside[self], down[self], up[other]]);
            }
        }

        return net.ToSystem(inside[0], inside[1]);
    }

    /// <summary>Contest model Referendum: one call, then each votes one way or the other. 3 to the n, and the marking before (59,050 for 10).</summary>
    public static TransitionSystem Referendum(int count)
    {
        PetriNet net = new();
        int ready = net.Place("ready", true);
        int[] voting = net.Places("voting", count);
        int[] yes = net.Places("yes", count);
        int[] no = net.Places("no", count);
        net.Transition([ready], voting);
        for (int self = 0; self < count; self++)
        {
            net.Transition([voting[self]], [yes[self]]);
            net.Transition([voting[self]], [no[self]]);
        }

        return net.ToSystem(yes[0], no[0]);
    }

    /// <summary>
    /// Contest model Eratosthenes: a number that is there strikes out a multiple. 2 to the number of composites (32 for 10, 2,048 for 20,
    /// 1.718e10 for 50): each is struck out or not, by its least prime factor, which always stays.
    /// </summary>
    public static TransitionSystem Eratosthenes(int last)
    {
        PetriNet net = new();
        int[] numbers = net.Places("number", last + 1, true);
        for (int number = 2; number <= last; number++)
        {
            for (int multiple = 2 * number; multiple <= last; multiple += number)
            {
                net.Transition([numbers[number], numbers[multiple]], [numbers[number]]);
            }
        }

        int two = net.Place("two is struck out");
        return net.ToSystem(two, numbers[2]);
    }

    public static int CompositesUpTo(int last) => Enumerable.Range(2, last - 1).Count(number => Enumerable.Range(2, number - 2).Any(factor => number % factor == 0));

    /// <summary>Contest model RwMutex: readers each alone with their permit, a writer takes all. 2 to the readers, plus the writers (1,034 for 10 and 10).</summary>
    public static TransitionSystem ReadersAndWriters(int readers, int writers)
    {
        PetriNet net = new();
        int[] permits = net.Places("permit", readers, true);
        int[] reading = net.Places("reading", readers);
        int[] waiting = net.Places("waiting", writers, true);
        int[] writing = net.Places("writing", writers);
        for (int reader = 0; reader < readers; reader++)
        {
            net.Transition([permits[reader]], [reading[reader]]);
            net.Transition([reading[reader]], [permits[reader]]);
        }

        for (int writer = 0; writer < writers; writer++)
        {
            net.Transition([waiting[writer], .. permits], [writing[writer]]);
            net.Transition([writing[writer]], [waiting[writer], .. permits]);
        }

        return net.ToSystem(writing[0], reading[0]);
    }

    /// <summary>
    /// Milner's cyclic scheduler ("Communication and Concurrency", 1989): a turn goes round, starts each task in order and waits where
    /// the task of the last round still runs. n times 2 to the (n + 1), derived: the turn is before or after the start at one
    /// of n, and any set of tasks may still run.
    /// </summary>
    public static TransitionSystem CyclicScheduler(int count)
    {
        PetriNet net = new();
        int[] turn = [.. Enumerable.Range(0, count).Select(self => net.Place(FormattableString.Invariant($"turn{self}"), self == 0))];
        int[] started = net.Places("started", count);
        int[] idle = net.Places("idle", count, true);
        int[] running = net.Places("running", count);
        for (int self = 0; self < count; self++)
        {
            net.Transition([turn[self], idle[self]], [started[self], running[self]]);
            net.Transition([started[self]], [turn[(self + 1) % count]]);
            net.Transition([running[self]], [idle[self]]);
        }

        return net.ToSystem(turn[0], turn[1]);
    }
}
