package hairline.checks.setup;

import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;

/** Why a text is no value of the kind that is due: what is wrong, and what would do. */
final class Misread extends Exception {
  private static final long serialVersionUID = 1L;

  private final String sentence;
  private final String cure;
  private final transient Optional<Node> place;

  Misread(String sentence, String cure) {
    this(sentence, cure, Optional.empty());
  }

  private Misread(String sentence, String cure, Optional<Node> place) {
    super(sentence, null, false, false);
    this.sentence = sentence;
    this.cure = cure;
    this.place = place;
  }

  /** The same, standing at this node unless its place is known more closely already. */
  Misread at(Node node) {
    return place.isPresent() ? this : new Misread(sentence, cure, Optional.of(node));
  }

  String sentence() {
    return sentence;
  }

  String cure() {
    return cure;
  }

  Optional<Node> place() {
    return place;
  }
}
