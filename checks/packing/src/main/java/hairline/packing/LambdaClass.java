package hairline.packing;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * A class in place of a lambda or method reference. It belongs to the nest of the class where that
 * stands, and so may call what is private there. The parts are those of {@code
 * java.lang.invoke.LambdaMetafactory}.
 *
 * @param name the internal name of the new class
 * @param site where the lambda stands
 * @param made what the call takes, the captured values, and what it returns, the interface
 * @param method the name of the interface's method
 * @param erased the type of that method
 * @param does what the lambda does
 * @param known the type of the method with the type arguments that the source has
 */
record LambdaClass(
    String name,
    PlainClasses.Site site,
    Type made,
    String method,
    Type erased,
    Handle does,
    Type known) {
  private static final String INIT = "<init>";
  private static final String ONLY = "ONLY";
  private static final String OF = "of";

  /** Whether all its conversions are known at once, so that plain code can make them. */
  boolean isPlain() {
    List<Type> taken = taken();
    List<Type> given = new ArrayList<>(List.of(captured()));
    given.addAll(List.of(known.getArgumentTypes()));
    return IntStream.range(0, taken.size()).allMatch(k -> Boxes.isPlain(given.get(k), taken.get(k)))
        && Boxes.isPlain(returned(), erased.getReturnType());
  }

  /** Writes the call that leaves the lambda on the stack, its captured values taken from there. */
  void call(MethodVisitor code) {
    if (captured().length == 0) {
      code.visitFieldInsn(Opcodes.GETSTATIC, name, ONLY, self().getDescriptor());
    } else {
      code.visitMethodInsn(
          Opcodes.INVOKESTATIC, name, OF, Type.getMethodDescriptor(self(), captured()), false);
    }
  }

  /** The class file. */
  byte[] bytes() {
    ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);
    writer.visit(
        site.version(),
        Opcodes.ACC_FINAL | Opcodes.ACC_SUPER | Opcodes.ACC_SYNTHETIC,
        name,
        null,
        "java/lang/Object",
        new String[] {made.getReturnType().getInternalName()});
    writer.visitNestHost(site.host());
    constructor(writer);
    if (captured().length == 0) {
      only(writer);
    } else {
      factory(writer);
    }
    body(writer);
    writer.visitEnd();
    return writer.toByteArray();
  }

  private Type[] captured() {
    return made.getArgumentTypes();
  }

  private Type self() {
    return Type.getObjectType(name);
  }

  private static String field(int k) {
    return "captured" + k;
  }

  private void constructor(ClassWriter writer) {
    MethodVisitor code =
        writer.visitMethod(Opcodes.ACC_PRIVATE, INIT, constructorType(), null, null);
    code.visitCode();
    code.visitVarInsn(Opcodes.ALOAD, 0);
    code.visitMethodInsn(Opcodes.INVOKESPECIAL, "java/lang/Object", INIT, "()V", false);
    int variable = 1;
    for (int k = 0; k < captured().length; k++) {
      Type type = captured()[k];
      writer
          .visitField(
              Opcodes.ACC_PRIVATE | Opcodes.ACC_FINAL, field(k), type.getDescriptor(), null, null)
          .visitEnd();
      code.visitVarInsn(Opcodes.ALOAD, 0);
      code.visitVarInsn(type.getOpcode(Opcodes.ILOAD), variable);
      code.visitFieldInsn(Opcodes.PUTFIELD, name, field(k), type.getDescriptor());
      variable += type.getSize();
    }
    end(code, Type.VOID_TYPE);
  }

  private String constructorType() {
    return Type.getMethodDescriptor(Type.VOID_TYPE, captured());
  }

  /** The one object of a lambda that captures nothing. */
  private void only(ClassWriter writer) {
    writer
        .visitField(
            Opcodes.ACC_STATIC | Opcodes.ACC_FINAL, ONLY, self().getDescriptor(), null, null)
        .visitEnd();
    MethodVisitor code = writer.visitMethod(Opcodes.ACC_STATIC, "<clinit>", "()V", null, null);
    code.visitCode();
    make(code);
    code.visitFieldInsn(Opcodes.PUTSTATIC, name, ONLY, self().getDescriptor());
    end(code, Type.VOID_TYPE);
  }

  private void factory(ClassWriter writer) {
    MethodVisitor code =
        writer.visitMethod(
            Opcodes.ACC_STATIC, OF, Type.getMethodDescriptor(self(), captured()), null, null);
    code.visitCode();
    make(code);
    end(code, self());
  }

  /** Makes a new one from the method's first variables. */
  private void make(MethodVisitor code) {
    code.visitTypeInsn(Opcodes.NEW, name);
    code.visitInsn(Opcodes.DUP);
    int variable = 0;
    for (Type type : captured()) {
      code.visitVarInsn(type.getOpcode(Opcodes.ILOAD), variable);
      variable += type.getSize();
    }
    code.visitMethodInsn(Opcodes.INVOKESPECIAL, name, INIT, constructorType(), false);
  }

  /**
   * The interface's method: the captured values and its own arguments go to what the lambda does.
   */
  private void body(ClassWriter writer) {
    MethodVisitor code =
        writer.visitMethod(Opcodes.ACC_PUBLIC, method, erased.getDescriptor(), null, null);
    code.visitCode();
    if (does.getTag() == Opcodes.H_NEWINVOKESPECIAL) {
      code.visitTypeInsn(Opcodes.NEW, does.getOwner());
      code.visitInsn(Opcodes.DUP);
    }
    List<Type> taken = taken();
    int argument = 0;
    for (int k = 0; k < captured().length; k++) {
      Type type = captured()[k];
      code.visitVarInsn(Opcodes.ALOAD, 0);
      code.visitFieldInsn(Opcodes.GETFIELD, name, field(k), type.getDescriptor());
      Boxes.convert(code, type, type, taken.get(argument++));
    }
    int variable = 1;
    for (int k = 0; k < erased.getArgumentTypes().length; k++) {
      Type type = erased.getArgumentTypes()[k];
      code.visitVarInsn(type.getOpcode(Opcodes.ILOAD), variable);
      variable += type.getSize();
      Boxes.convert(code, type, known.getArgumentTypes()[k], taken.get(argument++));
    }
    invoke(code);
    Boxes.convert(code, returned(), returned(), erased.getReturnType());
    end(code, erased.getReturnType());
  }

  /** The types that the method takes which does the work, with the object it is called on. */
  private List<Type> taken() {
    List<Type> taken = new ArrayList<>();
    if (does.getTag() != Opcodes.H_INVOKESTATIC && does.getTag() != Opcodes.H_NEWINVOKESPECIAL) {
      taken.add(Type.getObjectType(does.getOwner()));
    }
    taken.addAll(List.of(Type.getArgumentTypes(does.getDesc())));
    return taken;
  }

  private void invoke(MethodVisitor code) {
    int call =
        switch (does.getTag()) {
          case Opcodes.H_INVOKESTATIC -> Opcodes.INVOKESTATIC;
          case Opcodes.H_NEWINVOKESPECIAL -> Opcodes.INVOKESPECIAL;
          case Opcodes.H_INVOKEINTERFACE -> Opcodes.INVOKEINTERFACE;
          // A private method of the nest is called like any other.
          case Opcodes.H_INVOKEVIRTUAL, Opcodes.H_INVOKESPECIAL ->
              does.isInterface() ? Opcodes.INVOKEINTERFACE : Opcodes.INVOKEVIRTUAL;
          default -> throw new IllegalArgumentException("a lambda can't do " + does);
        };
    code.visitMethodInsn(call, does.getOwner(), does.getName(), does.getDesc(), does.isInterface());
  }

  private Type returned() {
    return does.getTag() == Opcodes.H_NEWINVOKESPECIAL
        ? Type.getObjectType(does.getOwner())
        : Type.getReturnType(does.getDesc());
  }

  private static void end(MethodVisitor code, Type returned) {
    code.visitInsn(returned.getOpcode(Opcodes.IRETURN));
    code.visitMaxs(0, 0);
    code.visitEnd();
  }
}
