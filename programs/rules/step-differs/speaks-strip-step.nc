%
O1 (the same in a flight that is declared by its step)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-0.4 Z1.
Z-0.004
G1 X0. F100.
Z-0.008
X3.
G0 Z1.
X-3. Y0.1
Z-0.004
G1 X0.
Z-0.008
X3. ; expect step-differs warning @1 x1: a strip of stairs 100 µm wide, half of the tool is 200 µm, is left at 0 µm between floors at -8 µm and -8 µm && at X0.002 Y-0.15, 4 mm long && declares by its step && begun at line 12 && a feature of its own for it
G0 Z1.
M5
M30
%
