{ Standard functions and function blocks of IEC 61131-3 as its text and timing diagrams have them (from memory): the outside judge
  of what the reader of structured text makes of them. A timer reads the time of its call; it knows nothing of scans. }
unit StandardBlocks;
{$MODE OBJFPC}
{$R+}{$Q+}

interface

var
  { Milliseconds since the start. }
  Now: Int64;

type
  v_TON = object
    v_IN, v_Q, running: Boolean;
    v_PT, v_ET, began: Int64;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_TOF = object
    v_IN, v_Q, before: Boolean;
    v_PT, v_ET, began: Int64;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_TP = object
    v_IN, v_Q, before: Boolean;
    v_PT, v_ET, began: Int64;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_R_TRIG = object
    v_CLK, v_Q, m: Boolean;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_F_TRIG = object
    v_CLK, v_Q, m: Boolean;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_SR = object
    v_S1, v_R, v_Q1: Boolean;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_RS = object
    v_S, v_R1, v_Q1: Boolean;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_CTU = object
    v_CU, v_R, v_Q: Boolean;
    v_PV, v_CV: SmallInt;
    edge: v_R_TRIG;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_CTD = object
    v_CD, v_LD, v_Q: Boolean;
    v_PV, v_CV: SmallInt;
    edge: v_R_TRIG;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

  v_CTUD = object
    v_CU, v_CD, v_R, v_LD, v_QU, v_QD: Boolean;
    v_PV, v_CV: SmallInt;
    up, down: v_R_TRIG;
    procedure Power(cold, kept: Boolean);
    procedure Call;
  end;

function std_ABS(a: Int64): Int64;
function std_MIN(a, b: Int64): Int64;
function std_MAX(a, b: Int64): Int64;
function std_LIMIT(lowest, a, highest: Int64): Int64;
function std_MOVE(a: Int64): Int64;
function std_MOVE(a: Boolean): Boolean;
function std_SEL(g: Boolean; a, b: Int64): Int64;
function std_SEL(g: Boolean; a, b: Boolean): Boolean;
function std_TO_SINT(a: Int64): ShortInt;
function std_TO_INT(a: Int64): SmallInt;
function std_TO_DINT(a: Int64): LongInt;
function std_TO_UINT(a: Int64): Word;
function std_TO_UDINT(a: Int64): LongWord;
function std_TO_SINT(a: Boolean): ShortInt;
function std_TO_INT(a: Boolean): SmallInt;
function std_TO_DINT(a: Boolean): LongInt;
function std_TO_BOOL(a: Int64): Boolean;
operator ** (base, exponent: Int64): Int64;

{ How many calls a delay has been asked for, up to a bound: the program counts scans, the timer has times. }
function ScansAsked(const timer: v_TON; scan, most: Int64): LongInt;

implementation

procedure v_TON.Power(cold, kept: Boolean);
begin
  if kept and not cold then Exit;
  v_IN := False; v_Q := False; running := False; v_PT := 0; v_ET := 0; began := 0;
end;

procedure v_TON.Call;
begin
  if not v_IN then begin
    running := False; v_Q := False; v_ET := 0;
    Exit;
  end;
  if not running then begin running := True; began := Now; end;
  v_ET := std_MIN(Now - began, v_PT);
  v_Q := v_ET >= v_PT;
end;

procedure v_TOF.Power(cold, kept: Boolean);
begin
  if kept and not cold then Exit;
  v_IN := False; v_Q := False; before := False; v_PT := 0; v_ET := 0; began := 0;
end;

procedure v_TOF.Call;
begin
  if v_IN then begin
    v_Q := True; v_ET := 0;
  end else begin
    if before then began := Now;
    if v_Q then begin
      v_ET := std_MIN(Now - began, v_PT);
      v_Q := v_ET < v_PT;
    end;
  end;
  before := v_IN;
end;

procedure v_TP.Power(cold, kept: Boolean);
begin
  if kept and not cold then Exit;
  v_IN := False; v_Q := False; before := False; v_PT := 0; v_ET := 0; began := 0;
end;

{ An edge while the pulse lasts does nothing; in the very call in which it ends neither, which the diagrams leave open. }
procedure v_TP.Call;
begin
  if v_Q then begin
    v_ET := std_MIN(Now - began, v_PT);
    v_Q := v_ET < v_PT;
  end else if v_IN and not before then begin
    began := Now; v_ET := 0; v_Q := v_PT > 0;
  end;
  if not v_Q and not v_IN then v_ET := 0;
  before := v_IN;
end;

procedure v_R_TRIG.Power(cold, kept: Boolean);
begin
  if kept and not cold then Exit;
  v_CLK := False; v_Q := False; m := False;
end;

procedure v_R_TRIG.Call;
begin
  v_Q := v_CLK and not m;
  m := v_CLK;
end;

procedure v_F_TRIG.Power(cold, kept: Boolean);
begin
  if kept and not cold then Exit;
  v_CLK := False; v_Q := False; m := False;
end;

procedure v_F_TRIG.Call;
begin
  v_Q := (not v_CLK) and (not m);
  m := not v_CLK;
end;

procedure v_SR.Power(cold, kept: Boolean);
begin
  if kept and not cold then Exit;
  v_S1 := False; v_R := False; v_Q1 := False;
end;

procedure v_SR.Call;
begin
  v_Q1 := v_S1 or ((not v_R) and v_Q1);
end;

procedure v_RS.Power(cold, kept: Boolean);
begin
  if kept and not cold then Exit;
  v_S := False; v_R1 := False; v_Q1 := False;
end;

procedure v_RS.Call;
begin
  v_Q1 := (not v_R1) and (v_S or v_Q1);
end;

procedure v_CTU.Power(cold, kept: Boolean);
begin
  edge.Power(cold, kept);
  if kept and not cold then Exit;
  v_CU := False; v_R := False; v_Q := False; v_PV := 0; v_CV := 0;
end;

procedure v_CTU.Call;
begin
  edge.v_CLK := v_CU; edge.Call;
  if v_R then v_CV := 0
  else if edge.v_Q and (v_CV < High(SmallInt)) then v_CV := v_CV + 1;
  v_Q := v_CV >= v_PV;
end;

procedure v_CTD.Power(cold, kept: Boolean);
begin
  edge.Power(cold, kept);
  if kept and not cold then Exit;
  v_CD := False; v_LD := False; v_Q := False; v_PV := 0; v_CV := 0;
end;

procedure v_CTD.Call;
begin
  edge.v_CLK := v_CD; edge.Call;
  if v_LD then v_CV := v_PV
  else if edge.v_Q and (v_CV > Low(SmallInt)) then v_CV := v_CV - 1;
  v_Q := v_CV <= 0;
end;

procedure v_CTUD.Power(cold, kept: Boolean);
begin
  up.Power(cold, kept);
  down.Power(cold, kept);
  if kept and not cold then Exit;
  v_CU := False; v_CD := False; v_R := False; v_LD := False; v_QU := False; v_QD := False; v_PV := 0; v_CV := 0;
end;

procedure v_CTUD.Call;
begin
  up.v_CLK := v_CU; up.Call;
  down.v_CLK := v_CD; down.Call;
  if v_R then v_CV := 0
  else if v_LD then v_CV := v_PV
  else if not (up.v_Q and down.v_Q) then begin
    if up.v_Q and (v_CV < High(SmallInt)) then v_CV := v_CV + 1
    else if down.v_Q and (v_CV > Low(SmallInt)) then v_CV := v_CV - 1;
  end;
  v_QU := v_CV >= v_PV;
  v_QD := v_CV <= 0;
end;

function std_ABS(a: Int64): Int64;
begin
  if a < 0 then std_ABS := -a else std_ABS := a;
end;

function std_MIN(a, b: Int64): Int64;
begin
  if a < b then std_MIN := a else std_MIN := b;
end;

function std_MAX(a, b: Int64): Int64;
begin
  if a > b then std_MAX := a else std_MAX := b;
end;

function std_LIMIT(lowest, a, highest: Int64): Int64;
begin
  std_LIMIT := std_MIN(std_MAX(a, lowest), highest);
end;

function std_MOVE(a: Int64): Int64;
begin
  std_MOVE := a;
end;

function std_MOVE(a: Boolean): Boolean;
begin
  std_MOVE := a;
end;

function std_SEL(g: Boolean; a, b: Int64): Int64;
begin
  if g then std_SEL := b else std_SEL := a;
end;

function std_SEL(g: Boolean; a, b: Boolean): Boolean;
begin
  if g then std_SEL := b else std_SEL := a;
end;

function std_TO_SINT(a: Int64): ShortInt;
begin
  std_TO_SINT := a;
end;

function std_TO_INT(a: Int64): SmallInt;
begin
  std_TO_INT := a;
end;

function std_TO_DINT(a: Int64): LongInt;
begin
  std_TO_DINT := a;
end;

function std_TO_UINT(a: Int64): Word;
begin
  std_TO_UINT := a;
end;

function std_TO_UDINT(a: Int64): LongWord;
begin
  std_TO_UDINT := a;
end;

function std_TO_SINT(a: Boolean): ShortInt;
begin
  std_TO_SINT := Ord(a);
end;

function std_TO_INT(a: Boolean): SmallInt;
begin
  std_TO_INT := Ord(a);
end;

function std_TO_DINT(a: Boolean): LongInt;
begin
  std_TO_DINT := Ord(a);
end;

function std_TO_BOOL(a: Int64): Boolean;
begin
  std_TO_BOOL := a <> 0;
end;

operator ** (base, exponent: Int64): Int64;
begin
  Result := 1;
  while exponent > 0 do begin
    Result := Result * base;
    exponent := exponent - 1;
  end;
end;

function ScansAsked(const timer: v_TON; scan, most: Int64): LongInt;
begin
  if timer.v_IN then ScansAsked := std_MIN((timer.v_ET div scan) + 1, most) else ScansAsked := 0;
end;

end.
