%
O1 (the same program, but for the tool measured before the warm-up)
G21 G90 G17 G94
G54
T3 M6
S30000 M3
M72
M71
G0 G43 H3 Z1.
X-3. Y0.
Z-0.004
G1 X3. F100. ; expect budget-exceeds-tolerance error: step of 4 µm in pair may be off by && spindle growth 5.5 && from measuring at line 7 to line 12 | expect tool-measured-cold error | expect growth-exceeds-share error: step of 4 µm at least 5.512 µm higher, allowed 0.231 µm
G0 Z1.
M5
M30
%
