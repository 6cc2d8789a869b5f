%
O1 (one corner: what goes straight on is none, and a spring pass takes no step)
G21 G90 G17 G94 G64
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z0.01
G1 Z-0.0039 F60.
X1. F100. ; expect blend-exceeds-step warning: corners in Z are blended within 1 µm, a quarter of the step is 0.975 µm && G64 in force; step 3.9 µm; machine.control.path_tolerance && G61 or G9 at the corner, or a finer machine.control.path_tolerance
X1.5
G0 Z0.01
X0.
G1 Z-0.0039 F60.
X1. F100.
G0 Z1.
M5
M30
%
