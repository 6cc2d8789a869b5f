package hairline.packing;

import java.util.ArrayList;
import java.util.List;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * The code of a record's own {@code equals}, {@code hashCode} and {@code toString}, as {@code
 * java.lang.Record} and {@code java.lang.runtime.ObjectMethods} have them: references by {@code
 * Objects}, doubles by {@code Double.compare}.
 *
 * @param owner the internal name of the record
 * @param names of its components
 * @param fields that hold them, in the same order
 */
record RecordMethod(String owner, List<String> names, List<Handle> fields) {
  /** How many words of the stack the code takes at most. */
  static final int STACK = 6;

  private static final String OBJECT = "Ljava/lang/Object;";
  private static final String BUILDER = "java/lang/StringBuilder";

  /**
   * Reads what the compiler hands over: the record's class, the names in one text, the fields'
   * getters.
   */
  static RecordMethod of(String owner, Object... arguments) {
    String names = (String) arguments[1];
    List<Handle> fields = new ArrayList<>();
    for (int k = 2; k < arguments.length; k++) {
      fields.add((Handle) arguments[k]);
    }
    return new RecordMethod(owner, names.isEmpty() ? List.of() : List.of(names.split(";")), fields);
  }

  /**
   * Writes the code where the arguments lie on the stack, and in the method's first variables too.
   */
  void emit(String method, MethodVisitor code) {
    switch (method) {
      case "equals" -> equal(code);
      case "hashCode" -> hash(code);
      case "toString" -> text(code);
      default -> throw new IllegalArgumentException("no method of a record: " + method);
    }
  }

  private void equal(MethodVisitor code) {
    Label same = new Label();
    Label other = new Label();
    code.visitJumpInsn(Opcodes.IF_ACMPEQ, same);
    code.visitVarInsn(Opcodes.ALOAD, 1);
    code.visitTypeInsn(Opcodes.INSTANCEOF, owner);
    code.visitJumpInsn(Opcodes.IFEQ, other);
    for (Handle field : fields) {
      get(0, field, code);
      get(1, field, code);
      switch (Type.getType(field.getDesc()).getSort()) {
        case Type.OBJECT, Type.ARRAY -> {
          call(code, "java/util/Objects", "equals", "(" + OBJECT + OBJECT + ")Z");
          code.visitJumpInsn(Opcodes.IFEQ, other);
        }
        case Type.DOUBLE -> {
          call(code, "java/lang/Double", "compare", "(DD)I");
          code.visitJumpInsn(Opcodes.IFNE, other);
        }
        case Type.FLOAT -> {
          call(code, "java/lang/Float", "compare", "(FF)I");
          code.visitJumpInsn(Opcodes.IFNE, other);
        }
        case Type.LONG -> {
          code.visitInsn(Opcodes.LCMP);
          code.visitJumpInsn(Opcodes.IFNE, other);
        }
        default -> code.visitJumpInsn(Opcodes.IF_ICMPNE, other);
      }
    }
    code.visitLabel(same);
    frame(code);
    code.visitInsn(Opcodes.ICONST_1);
    code.visitInsn(Opcodes.IRETURN);
    code.visitLabel(other);
    frame(code);
    code.visitInsn(Opcodes.ICONST_0);
    // The compiler's own return follows.
  }

  private void frame(MethodVisitor code) {
    code.visitFrame(Opcodes.F_NEW, 2, new Object[] {owner, "java/lang/Object"}, 0, new Object[0]);
  }

  private void hash(MethodVisitor code) {
    code.visitInsn(Opcodes.POP);
    code.visitInsn(Opcodes.ICONST_0);
    for (Handle field : fields) {
      code.visitIntInsn(Opcodes.BIPUSH, 31);
      code.visitInsn(Opcodes.IMUL);
      get(0, field, code);
      Type type = Type.getType(field.getDesc());
      if (Boxes.isPrimitive(type)) {
        call(code, Boxes.of(type), "hashCode", "(" + field.getDesc() + ")I");
      } else {
        call(code, "java/util/Objects", "hashCode", "(" + OBJECT + ")I");
      }
      code.visitInsn(Opcodes.IADD);
    }
  }

  private void text(MethodVisitor code) {
    code.visitInsn(Opcodes.POP);
    code.visitTypeInsn(Opcodes.NEW, BUILDER);
    code.visitInsn(Opcodes.DUP);
    code.visitMethodInsn(Opcodes.INVOKESPECIAL, BUILDER, "<init>", "()V", false);
    // What Class.getSimpleName gives: the name that the source has for it.
    code.visitLdcInsn(Type.getObjectType(owner));
    code.visitMethodInsn(
        Opcodes.INVOKEVIRTUAL, "java/lang/Class", "getSimpleName", "()Ljava/lang/String;", false);
    append(code, "Ljava/lang/String;");
    String before = "[";
    for (int k = 0; k < fields.size(); k++) {
      Handle field = fields.get(k);
      code.visitLdcInsn(before + names.get(k) + "=");
      append(code, "Ljava/lang/String;");
      get(0, field, code);
      append(
          code,
          switch (Type.getType(field.getDesc()).getSort()) {
            case Type.OBJECT, Type.ARRAY -> OBJECT;
            case Type.BYTE, Type.SHORT -> "I";
            default -> field.getDesc();
          });
      before = ", ";
    }
    code.visitLdcInsn(fields.isEmpty() ? "[]" : "]");
    append(code, "Ljava/lang/String;");
    code.visitMethodInsn(Opcodes.INVOKEVIRTUAL, BUILDER, "toString", "()Ljava/lang/String;", false);
  }

  private static void append(MethodVisitor code, String descriptor) {
    code.visitMethodInsn(
        Opcodes.INVOKEVIRTUAL, BUILDER, "append", "(" + descriptor + ")L" + BUILDER + ";", false);
  }

  private void get(int variable, Handle field, MethodVisitor code) {
    code.visitVarInsn(Opcodes.ALOAD, variable);
    if (variable == 1) {
      code.visitTypeInsn(Opcodes.CHECKCAST, owner);
    }
    code.visitFieldInsn(Opcodes.GETFIELD, field.getOwner(), field.getName(), field.getDesc());
  }

  private static void call(MethodVisitor code, String owner, String name, String descriptor) {
    code.visitMethodInsn(Opcodes.INVOKESTATIC, owner, name, descriptor, false);
  }
}
