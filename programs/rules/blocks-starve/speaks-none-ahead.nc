%
O1 (no look-ahead, and a block just too short)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G1 X0.01 F450.
X0.0129 ; expect blocks-starve warning: behind 1 of 3 feed blocks: it can hold 435 mm/min on the shortest of them, programmed 450 mm/min && longer blocks, or a feed of 435 mm/min && shortest block 2.9 µm / 0.4 ms a block (machine.control.block_time) && the look-ahead of 0 blocks (machine.control.look_ahead) is used up; in sum the tool waits 0.01333 ms for blocks
X0.02
G0 Z1.
M5
M30
%
