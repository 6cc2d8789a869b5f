%
O1 (a stop in contact for just more than a revolution)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G61
G1 X0. F600. ; expect feed-not-reached warning: planned feed down to 0 mm/min, a chip needs 27 mm/min && programmed 600 mm/min && slowest at line 11; tool 3, 2 flutes: feed per tooth 600 mm/min / (30000 rpm × 2) = 10 µm; planned with machine.acceleration, machine.jerk, machine.control.block_time and machine.control.path_tolerance
X3.
G64
G0 Z1.
M5
M30
%
