package hairline.checks.stock;

import hairline.checks.motion.ControlProfile;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Move;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.setup.Length;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.setup.ToolShape;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * Moves a second of a finishing raster over a field of 2048 × 2048 cells: moves of four cells,
 * lines eight cells apart. A flat tool cuts terraces, a ball a surface that varies gently.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@OperationsPerInvocation(HeightFieldBenchmark.MOVES)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 5, time = 1)
@Fork(1)
@State(Scope.Thread)
public class HeightFieldBenchmark {
  static final int MOVES = 60_000;

  private static final long CELL_PM = 4_000_000;
  private static final int CELLS = 2048;
  private static final double CELL_UM = CELL_PM / 1e6;
  private static final long SEED = 7;

  /** Shape of the tool. */
  @Param({"FLAT", "BALL"})
  public String shape = "";

  /** Radius of the tool in cells. */
  @Param({"25", "50"})
  public int radius;

  private final List<Move> moves = new ArrayList<>();
  private final List<Path> paths = new ArrayList<>();
  private Optional<StockModel> model = Optional.empty();

  /** Writes and reads the program. */
  @Setup
  public void write() throws IOException {
    ToolShape toolShape = ToolShape.valueOf(shape);
    StringBuilder text = new StringBuilder();
    RasterProgram.Kind kind =
        toolShape == ToolShape.FLAT ? RasterProgram.Kind.TERRACES : RasterProgram.Kind.RELIEF;
    new RasterProgram(kind, CELLS * CELL_UM, 4 * CELL_UM, 8 * CELL_UM, SEED).write(text, 1, MOVES);
    moves.clear();
    paths.clear();
    new Interpreter(
            ControlProfile.UNKNOWN.withResolution(100_000),
            ProgramFiles.alone(
                PartPrograms.of("raster", text.toString().getBytes(StandardCharsets.UTF_8)),
                event -> {}))
        .run(
            event -> {
              if (event instanceof Move move) {
                moves.add(move);
              }
            },
            false);
    for (Move move : moves) {
      if (move.isFeed()) {
        paths.add(Path.of(move));
      }
    }
    model = Optional.of(model(toolShape));
  }

  private StockModel model(ToolShape toolShape) {
    long radiusPm = radius * CELL_PM;
    Tool tool =
        Tool.builder(1)
            .with(ToolKeys.SHAPE, toolShape)
            .with(ToolKeys.DIAMETER, new Length(2 * radiusPm))
            .with(ToolKeys.CORNER_RADIUS, new Length(toolShape == ToolShape.BALL ? radiusPm : 0))
            .build();
    long half = (CELLS / 2 + 64) * CELL_PM;
    return new StockModel(
        Optional.of(
            new StockModel.Box(
                -half, half, -half, half, 0, OptionalLong.of(-1_000_000_000L), "G54")),
        Map.of(1, tool),
        List.of(),
        20_000_000,
        1_000_000_000,
        Optional.empty(),
        CELL_PM,
        StockModel.chordError(CELL_PM),
        StockModel.Limits.DEFAULT);
  }

  /** The height field alone, from uncut stock. */
  @Benchmark
  public void field(Blackhole blackhole) {
    StockModel stock = model.orElseThrow();
    Surface surface = new Surface("G54", stock, new HeightGrid.TileBudget(stock.limits().tiles()));
    Cutter cutter = Cutter.of(stock.tools().values().iterator().next()).orElseThrow();
    Removed found = new Removed(CELL_PM);
    for (Path path : paths) {
      int id = cutter.flat() ? (int) (1 - path.z0 / 4_000_000) : Cut.NO_LEVEL;
      surface.cut(path, cutter, id, Cut.NO_LEVEL, found);
      blackhole.consume(found.all().cells);
    }
  }

  /** All that happens between motion and rules. */
  @Benchmark
  public void stage(Blackhole blackhole) {
    StockStage stage = new StockStage(model.orElseThrow(), blackhole::consume);
    moves.forEach(stage::accept);
  }
}
