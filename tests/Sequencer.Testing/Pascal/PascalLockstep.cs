using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;

namespace Sequencer.Testing.Pascal;

/// <summary>
/// A compiled <see cref="LockstepProgram"/> at work. Scans are told with the results expected of them; they are handed over in batches, so
/// a difference shows some scans late. Numbers count scans from 1. Nothing is allocated in a scan.
/// </summary>
public sealed class PascalLockstep : IDisposable
{
    private const int BatchBytes = 1 << 20;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("sequencer-pascal-");
    private readonly ImmutableArray<PascalValue> _inputs;
    private readonly ImmutableArray<PascalValue> _results;
    private readonly int _inputSize;
    private readonly int _resultSize;
    private readonly Process _process;
    private readonly StringBuilder _errors = new();
    private readonly byte[] _batch;
    private readonly byte[] _answer;
    private byte[] _expected;
    private byte[] _sent;
    private int _length;
    private int _told;
    private int _awaited;
    private long _compared;
    private Task<int>? _reading;

    public PascalLockstep(LockstepProgram program)
    {
        _inputs = program.Inputs;
        _results = program.Results;
        _inputSize = _inputs.Sum(value => value.Width);
        _resultSize = _results.Sum(value => value.Width);
        _batch = new byte[BatchBytes + _inputSize + 16];
        _expected = new byte[BatchBytes + _resultSize];
        _sent = new byte[_expected.Length];
        _answer = new byte[_expected.Length];
        string executable = FreePascal.Compile(_folder.FullName, program.Write());
        ProcessStartInfo start = new(executable) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        _process = Process.Start(start) ?? throw new InvalidOperationException("the compiled program did not start");
        _process.ErrorDataReceived += (_, line) => _errors.AppendLine(line.Data);
        _process.BeginErrorReadLine();
        _length = 4;
    }

    public long Scans { get; private set; }

    /// <summary>The first difference met, in words; null while there is none.</summary>
    public string? Difference { get; private set; }

    /// <summary>All variables have their first values, and the time is 0.</summary>
    public void Initialise() => _batch[_length++] = (byte)'I';

    public void Keep(int place) => Order('K', place);

    public void Restore(int place) => Order('R', place);

    /// <summary>What is kept in one place is kept in another too.</summary>
    public void Copy(int from, int to)
    {
        Order('F', from);
        Order('T', to);
    }

    /// <summary>One scan: inputs and results in the order of the program's.</summary>
    public void Scan(bool powerReturned, ReadOnlySpan<long> inputs, ReadOnlySpan<long> expected)
    {
        _batch[_length++] = (byte)(powerReturned ? 'P' : 'S');
        _length += Pack(_inputs, inputs, _batch.AsSpan(_length));
        _told += Pack(_results, expected, _expected.AsSpan(_told));
        Scans++;
        if (_length > BatchBytes || _told > BatchBytes)
        {
            Send();
        }
    }

    /// <summary>Waits until every scan told is compared; false where one differs.</summary>
    public bool Finish()
    {
        Send();
        Compare();
        return Difference is null;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
        _folder.Delete(recursive: true);
    }

    private void Order(char letter, int place)
    {
        _batch[_length] = (byte)letter;
        BinaryPrimitives.WriteInt32LittleEndian(_batch.AsSpan(_length + 1), place);
        _length += 5;
        if (_length > BatchBytes)
        {
            Send();
        }
    }

    /// <summary>While the program works at a batch the next one is made; its answer is read meanwhile, so that neither waits for the other for ever.</summary>
    private void Send()
    {
        Compare();
        if (_length == 4 || Difference is not null)
        {
            (_length, _told) = (4, 0);
            return;
        }

        BinaryPrimitives.WriteInt32LittleEndian(_batch, _length - 4);
        try
        {
            _process.StandardInput.BaseStream.Write(_batch, 0, _length);
            _process.StandardInput.BaseStream.Flush();
        }
        catch (IOException)
        {
            Stopped();
        }

        int wanted = _told;
        _awaited = wanted;
        _reading = Task.Run(() => _process.StandardOutput.BaseStream.ReadAtLeast(_answer.AsSpan(0, wanted), wanted, throwOnEndOfStream: false));
        (_expected, _sent) = (_sent, _expected);
        (_length, _told) = (4, 0);
    }

    private void Compare()
    {
        if (_reading is null)
        {
            return;
        }

        int got = _reading.GetAwaiter().GetResult();
        _reading = null;
        int same = _answer.AsSpan(0, got).CommonPrefixLength(_sent.AsSpan(0, _awaited));
        if (same < got)
        {
            Differs(same);
        }
        else if (got < _awaited)
        {
            Stopped();
        }

        _compared += _awaited / _resultSize;
    }

    private void Differs(int place)
    {
        long scan = _compared + (place / _resultSize) + 1;
        int offset = place / _resultSize * _resultSize;
        foreach (PascalValue value in _results)
        {
            if (place < offset + value.Width)
            {
                Difference ??= FormattableString.Invariant($"scan {scan}: {value.Name} is {Value(value, _sent, offset)} in the program and {Value(value, _answer, offset)} in Pascal");
                return;
            }

            offset += value.Width;
        }
    }

    private void Stopped()
    {
        _process.WaitForExit(5000);
        Difference ??= FormattableString.Invariant($"the Pascal program stopped after scan {_compared} and before scan {Scans + 1}: {_errors}");
    }

    private static long Value(PascalValue value, byte[] bytes, int offset) =>
        value.IsBoolean ? bytes[offset] : BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(offset));

    private static int Pack(ImmutableArray<PascalValue> values, ReadOnlySpan<long> from, Span<byte> into)
    {
        int place = 0;
        for (int index = 0; index < values.Length; index++)
        {
            if (values[index].IsBoolean)
            {
                into[place++] = (byte)from[index];
            }
            else
            {
                BinaryPrimitives.WriteInt32LittleEndian(into[place..], (int)from[index]);
                place += 4;
            }
        }

        return place;
    }
}
