package hairline.checks.cli;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * A real browser without a window (Debian's package chromium), spoken to over its debugging port on
 * this machine.
 */
final class Browser implements AutoCloseable {
  /** Set where a missing browser is a failure and no reason to skip. */
  private static final boolean REQUIRED = Boolean.getBoolean("hairline.test.browser");

  private static final String LISTENING = "DevTools listening on ";
  private static final long PATIENCE_SECONDS = 120;
  private static boolean told;

  private final ObjectMapper json = new ObjectMapper();
  private final BlockingQueue<JsonNode> answers = new LinkedBlockingQueue<>();
  private final List<JsonNode> events = new ArrayList<>();
  private final Process process;
  private final WebSocket socket;
  private String session = "";
  private int last;

  private Browser(Process process, String address) throws Exception {
    this.process = process;
    this.socket =
        HttpClient.newHttpClient()
            .newWebSocketBuilder()
            .buildAsync(URI.create(address), new Listener())
            .get(PATIENCE_SECONDS, TimeUnit.SECONDS);
  }

  /** Where it is; skips the test where there is none and none is required. */
  static Browser start(Path folder) throws Exception {
    Optional<Path> program =
        List.of("chromium", "chromium-browser").stream()
            .flatMap(name -> List.of("/usr/bin/" + name, "/usr/local/bin/" + name).stream())
            .map(Path::of)
            .filter(Files::isExecutable)
            .findFirst();
    if (program.isEmpty() && REQUIRED) {
      throw new AssertionError("no browser, and hairline.test.browser asks for one");
    }
    if (program.isEmpty() && !told) {
      told = true;
      System.err.println("Tests in a browser are skipped: chromium is not installed.");
    }
    assumeTrue(program.isPresent(), "chromium is not installed");
    Process process =
        new ProcessBuilder(
                program.get().toString(),
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--disable-component-update",
                "--no-first-run",
                "--remote-debugging-port=0",
                "--user-data-dir=" + folder.resolve("profile"),
                "about:blank")
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    BufferedReader err =
        new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8));
    for (String line = err.readLine(); line != null; line = err.readLine()) {
      if (line.startsWith(LISTENING)) {
        Thread drain = new Thread(() -> err.lines().forEach(l -> {}), "browser");
        drain.setDaemon(true);
        drain.start();
        return new Browser(process, line.substring(LISTENING.length()).strip());
      }
    }
    throw new IOException("the browser ended: " + process.waitFor());
  }

  private final class Listener implements WebSocket.Listener {
    private final StringBuilder text = new StringBuilder();

    @Override
    public CompletionStage<?> onText(WebSocket webSocket, CharSequence data, boolean end) {
      text.append(data);
      if (end) {
        try {
          answers.add(json.readTree(text.toString()));
        } catch (IOException e) {
          throw new IllegalStateException(e);
        }
        text.setLength(0);
      }
      webSocket.request(1);
      return java.util.concurrent.CompletableFuture.completedFuture(null);
    }
  }

  /** Sends a command of the debugging protocol; what happens meanwhile is kept. */
  JsonNode send(String method, Object... namesAndValues) throws Exception {
    ObjectNode command = json.createObjectNode();
    int id = ++last;
    command.put("id", id).put("method", method);
    if (!session.isEmpty()) {
      command.put("sessionId", session);
    }
    ObjectNode parameters = command.putObject("params");
    for (int k = 0; k < namesAndValues.length; k += 2) {
      parameters.set((String) namesAndValues[k], json.valueToTree(namesAndValues[k + 1]));
    }
    socket.sendText(json.writeValueAsString(command), true).get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    while (true) {
      JsonNode answer = next();
      if (answer.path("id").asInt(0) == id) {
        if (answer.has("error")) {
          throw new IOException(method + ": " + answer.get("error"));
        }
        return answer.path("result");
      }
      events.add(answer);
    }
  }

  private JsonNode next() throws Exception {
    JsonNode answer = answers.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
    if (answer == null) {
      throw new IOException("the browser does not answer");
    }
    return answer;
  }

  /** Opens a page and waits until it has loaded. */
  void open(Path page) throws Exception {
    session = "";
    String target = send("Target.createTarget", "url", "about:blank").get("targetId").asText();
    session =
        send("Target.attachToTarget", "targetId", target, "flatten", true)
            .get("sessionId")
            .asText();
    send("Page.enable");
    send("Network.enable");
    send("Runtime.enable");
    send("Log.enable");
    events.clear();
    send("Page.navigate", "url", page.toUri().toString());
    while (events.stream()
        .noneMatch(e -> e.path("method").asText().equals("Page.loadEventFired"))) {
      events.add(next());
    }
  }

  /** What happened since the page was opened. */
  List<JsonNode> events(String method) {
    return events.stream().filter(e -> e.path("method").asText().equals(method)).toList();
  }

  /** The value of an expression in the page. */
  JsonNode value(String expression) throws Exception {
    return send("Runtime.evaluate", "expression", expression, "returnByValue", true)
        .path("result")
        .path("value");
  }

  @Override
  public void close() throws IOException {
    try {
      session = "";
      send("Browser.close");
      if (!process.waitFor(10, TimeUnit.SECONDS)) {
        process.destroyForcibly().waitFor();
      }
    } catch (Exception e) {
      process.destroyForcibly();
      throw new IOException(e);
    }
  }
}
