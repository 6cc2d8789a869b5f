%
O1 (never measured in the program: growth since is not known)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
S50000 M3
G4 P15.2
G0 X-3. Y-0.3 Z1.
Z-0.008
G1 X3. F400. ; not checked growth-exceeds-share: tool 3 is not measured in the program before it cuts, so growth since is not known (machine.codes.measure_tool would tell) | expect tool-not-measured warning x5: tool 3 makes a fine cut and was not measured since line 7 put it in the spindle && codes that measure: M72 (machine.codes.measure_tool) && M72 between these lines, with the spindle warm
Y0.
X-3.
Y0.3
X3.
G0 Z1.
X-1. Y0.
Z0.1
G1 Z-0.012 F60.
X1. F170.
G0 Z1.
M5
M30
%
