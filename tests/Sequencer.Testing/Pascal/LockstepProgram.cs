using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Sequencer.Testing.Pascal;

/// <summary>
/// A Pascal program that calls a block once for each scan it is told, with the inputs it is given, and answers the results. It reads
/// batches from its input: the length in bytes, then orders of a letter each, <c>S</c> a scan with its inputs, <c>P</c> the same after a loss of
/// power, <c>I</c> all as at first, and with the number of a place <c>K</c> keep all variables there, <c>R</c> take them back, <c>F</c> and
/// <c>T</c> copy from one to the other.
/// </summary>
/// <param name="Program">The rewritten text.</param>
/// <param name="Block">Its block that runs.</param>
/// <param name="ScanMilliseconds">From one call to the next.</param>
/// <param name="Places">How many states can be kept.</param>
public sealed record LockstepProgram(
    PascalProgram Program, string Block, int ScanMilliseconds, int Places, ImmutableArray<PascalValue> Inputs, ImmutableArray<PascalValue> Results)
{
    public string Write()
    {
        StringBuilder text = new();
        text.Append("program Lockstep;\n{$MODE OBJFPC}\n{$R+}{$Q+}\nuses SysUtils, StandardBlocks;\n");
        text.Append(Program.Declarations);
        text.Append(CultureInfo.InvariantCulture, $"type TKept = record block: v_{Block}; time: Int64; end;\n");
        text.Append(CultureInfo.InvariantCulture, $"const Scan = {ScanMilliseconds}; InputSize = {Inputs.Sum(value => value.Width)}; ResultSize = {Results.Sum(value => value.Width)};\n");
        text.Append(CultureInfo.InvariantCulture, $"var block: v_{Block}; kept: array[0..{Math.Max(1, Places) - 1}] of TKept;\n");
        text.Append("procedure Give(given: PByte);\nbegin\n  with block do begin\n");
        Place(Inputs, (value, place) => value.IsBoolean ? $"{value.Pascal} := given[{place}] <> 0;" : $"{value.Pascal} := PLongInt(given + {place})^;");
        text.Append("  end;\nend;\nprocedure Tell(told: PByte);\nbegin\n  with block do begin\n");
        Place(Results, (value, place) => value.IsBoolean ? $"told[{place}] := Ord({value.Pascal});" : $"PLongInt(told + {place})^ := Ord({value.Pascal});");
        text.Append("  end;\nend;\n");
        text.Append(Loop);
        return text.ToString();

        void Place(ImmutableArray<PascalValue> values, Func<PascalValue, string, string> line)
        {
            int place = 0;
            foreach (PascalValue value in values)
            {
                text.Append(CultureInfo.InvariantCulture, $"    {line(value, place.ToString(CultureInfo.InvariantCulture))}\n");
                place += value.Width;
            }
        }
    }

    private const string Loop =
        """
        function Fetch(into: PByte; wanted: LongInt): Boolean;
        var got: LongInt;
        begin
          while wanted > 0 do begin
            got := FileRead(StdInputHandle, into^, wanted);
            if got <= 0 then Exit(False);
            into := into + got; wanted := wanted - got;
          end;
          Fetch := True;
        end;

        procedure Send(from: PByte; wanted: LongInt);
        var gone: LongInt;
        begin
          while wanted > 0 do begin
            gone := FileWrite(StdOutputHandle, from^, wanted);
            if gone <= 0 then Halt(3);
            from := from + gone; wanted := wanted - gone;
          end;
        end;

        procedure ColdStart;
        begin
          FillChar(block, SizeOf(block), 0);
          block.Power(True, False);
          Now := 0;
        end;

        var
          batch, results: array of Byte;
          length, place, told, where, from: LongInt;
        begin
          from := 0;
          ColdStart;
          while Fetch(@length, 4) do begin
            SetLength(batch, length);
            { A scan takes a letter and its inputs. }
            SetLength(results, (length div (InputSize + 1) + 1) * ResultSize);
            if not Fetch(@batch[0], length) then Halt(4);
            place := 0; told := 0;
            while place < length do begin
              case Chr(batch[place]) of
                'S', 'P': begin
                  if Chr(batch[place]) = 'P' then block.Power(False, False);
                  Give(@batch[place + 1]);
                  block.Call;
                  Now := Now + Scan;
                  Tell(@results[told]);
                  place := place + 1 + InputSize; told := told + ResultSize;
                end;
                'I': begin ColdStart; place := place + 1; end;
                'K': begin
                  where := PLongInt(@batch[place + 1])^;
                  kept[where].block := block; kept[where].time := Now;
                  place := place + 5;
                end;
                'R': begin
                  where := PLongInt(@batch[place + 1])^;
                  block := kept[where].block; Now := kept[where].time;
                  place := place + 5;
                end;
                'F': begin from := PLongInt(@batch[place + 1])^; place := place + 5; end;
                'T': begin
                  where := PLongInt(@batch[place + 1])^;
                  kept[where] := kept[from];
                  place := place + 5;
                end;
                else Halt(5);
              end;
            end;
            if told > 0 then Send(@results[0], told);
          end;
        end.

        """;
}
