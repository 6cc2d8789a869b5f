%
O1 (without G43 the tool's length does not shift Z)
G21 G90 G17 G94
G54
T3 M6
S30000 M3
G0 X-3. Y0. Z1. ; expect length-offset-missing error: tool 3 moves in Z without a length offset since its change && put in the spindle at line 5, no G43 since
Z65.
Z65.0001 ; expect outside-travel error x4: Z reaches 5.0001 mm on the machine, its travel ends at 5 mm && Z 65.0001 mm in the program, shifted by -60 mm (offset); travel from machine.travel.Z
G43 H3 Z45.0001
G49 Z65.0001
Z65.
G43 H0 Z65.0001
Z65.
Z1.
M5
M30
%
