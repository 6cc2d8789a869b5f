%
O1 (0.12 and 0.1599 mm: just shorter than the radius)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0.5 Y0.3 Z1.
G1 G41 D3 X0.62 Y0.4599 F100. ; expect compensation-lead-in-short error: compensation is switched on over 0.1999 mm, the tool's radius is 0.2 mm && radius from the tool's diameter; machine.control.compensation is radius && a straight move of 0.2 mm or more
X1.
G40 X2.
G0 Z1.
M5
M30
%
