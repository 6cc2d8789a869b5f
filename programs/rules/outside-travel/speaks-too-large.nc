%
O1 (words at the end of what a position can be, and beyond it, on each way to move)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
G1 X9223372037. F500. ; expect outside-travel error @4: X9223372037 is beyond 9 000 km, the travel of X ends at 150 mm
G0 X-3.
G91 Y-9223372036. ; expect outside-travel error @5: Y reaches -9223372031 mm on the machine && Y -9223372036 mm in the program, shifted by 5 mm (offset); travel from machine.travel.Y
Y-1. ; expect outside-travel error @1: Y-1 is beyond 9 000 km, the travel of Y ends at -110 mm
G90 Y0.
G53 G0 Z99999999999999999999. ; expect outside-travel error: the travel of Z ends at 5 mm
G0 Z1.
G1 X-9223372036.85 ; expect outside-travel error: X reaches -9223372036.85477 && X -9223372036.85 mm in the program, shifted by -20 mm (offset); travel from machine.travel.X
G0 X0.
M5
M30
%
