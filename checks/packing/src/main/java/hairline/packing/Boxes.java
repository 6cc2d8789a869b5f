package hairline.packing;

import java.util.stream.Stream;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Numbers, characters and booleans with and without their box, and what turns one type into
 * another.
 */
final class Boxes {
  private static final Type[] PRIMITIVES = {
    Type.BOOLEAN_TYPE, Type.CHAR_TYPE, Type.BYTE_TYPE, Type.SHORT_TYPE,
    Type.INT_TYPE, Type.LONG_TYPE, Type.FLOAT_TYPE, Type.DOUBLE_TYPE
  };

  private Boxes() {}

  static boolean isPrimitive(Type type) {
    return type.getSort() < Type.ARRAY;
  }

  /** The internal name of the class that boxes a primitive type. */
  static String of(Type primitive) {
    return switch (primitive.getSort()) {
      case Type.BOOLEAN -> "java/lang/Boolean";
      case Type.CHAR -> "java/lang/Character";
      case Type.BYTE -> "java/lang/Byte";
      case Type.SHORT -> "java/lang/Short";
      case Type.INT -> "java/lang/Integer";
      case Type.LONG -> "java/lang/Long";
      case Type.FLOAT -> "java/lang/Float";
      case Type.DOUBLE -> "java/lang/Double";
      default -> throw new IllegalArgumentException("no box for " + primitive);
    };
  }

  /**
   * Turns what lies on the stack into another type, as {@code java.lang.invoke.LambdaMetafactory}
   * does: by widening, boxing, unboxing or a cast, or by dropping it.
   *
   * @param from the type as it lies there
   * @param known what it is known to be, narrower than {@code from} where the source has type
   *     arguments
   * @param to the type asked for
   */
  static void convert(MethodVisitor code, Type from, Type known, Type to) {
    if (from.equals(to)) {
      return;
    }
    if (to.getSort() == Type.VOID) {
      code.visitInsn(from.getSize() == 2 ? Opcodes.POP2 : Opcodes.POP);
    } else if (isPrimitive(from) && isPrimitive(to)) {
      widen(code, from, to);
    } else if (isPrimitive(from)) {
      code.visitMethodInsn(
          Opcodes.INVOKESTATIC,
          of(from),
          "valueOf",
          "(" + from.getDescriptor() + ")L" + of(from) + ";",
          false);
    } else if (isPrimitive(to)) {
      Type held = in(known);
      cast(code, from, Type.getObjectType(of(held)));
      code.visitMethodInsn(
          Opcodes.INVOKEVIRTUAL,
          of(held),
          held.getClassName() + "Value",
          "()" + held.getDescriptor(),
          false);
      widen(code, held, to);
    } else {
      cast(code, from, to);
    }
  }

  private static void cast(MethodVisitor code, Type from, Type to) {
    if (!from.equals(to) && !to.getInternalName().equals("java/lang/Object")) {
      code.visitTypeInsn(Opcodes.CHECKCAST, to.getInternalName());
    }
  }

  /**
   * Whether it is known at once how one type turns into another; a box may be hidden behind a type
   * argument.
   */
  static boolean isPlain(Type known, Type to) {
    return isPrimitive(known) || !isPrimitive(to) || to.equals(Type.VOID_TYPE) || isBox(known);
  }

  private static boolean isBox(Type type) {
    return Stream.of(PRIMITIVES).anyMatch(each -> of(each).equals(type.getInternalName()));
  }

  /** The primitive type in a box. */
  private static Type in(Type box) {
    return Stream.of(PRIMITIVES)
        .filter(each -> of(each).equals(box.getInternalName()))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no box: " + box));
  }

  private static void widen(MethodVisitor code, Type from, Type to) {
    if (from.equals(to) || (isInt(from) && isInt(to))) {
      return;
    }
    String both = (isInt(from) ? "I" : from.getDescriptor()) + to.getDescriptor();
    code.visitInsn(
        switch (both) {
          case "IJ" -> Opcodes.I2L;
          case "IF" -> Opcodes.I2F;
          case "ID" -> Opcodes.I2D;
          case "JF" -> Opcodes.L2F;
          case "JD" -> Opcodes.L2D;
          case "FD" -> Opcodes.F2D;
          default -> throw new IllegalArgumentException(from + " doesn't widen to " + to);
        });
  }

  /** Whether the machine keeps a type as an int. */
  private static boolean isInt(Type type) {
    return switch (type.getSort()) {
      case Type.BOOLEAN, Type.CHAR, Type.BYTE, Type.SHORT, Type.INT -> true;
      default -> false;
    };
  }
}
