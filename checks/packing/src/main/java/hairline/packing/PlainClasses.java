package hairline.packing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Classes in which lambdas, method references and the methods that records come with are plain
 * code. They do the same: a lambda that captures nothing is one object, the others are new each
 * time, as before. Serializable lambdas and those with bridges or markers stay as they are.
 */
final class PlainClasses {
  private final Map<String, byte[]> made = new LinkedHashMap<>();

  /** By the host of a nest, who joined it. */
  private final Map<String, List<String>> joined = new LinkedHashMap<>();

  private PlainClasses() {}

  /**
   * Rewrites classes that belong together.
   *
   * @param classes class files by internal name, with every host of a nest
   * @return those that changed and those that are new, by internal name, in the order given
   */
  static Map<String, byte[]> of(Map<String, byte[]> classes) {
    PlainClasses plain = new PlainClasses();
    classes.values().forEach(plain::rewrite);
    plain.joined.forEach(
        (host, members) -> {
          byte[] bytes = plain.made.containsKey(host) ? plain.made.get(host) : classes.get(host);
          if (bytes == null) {
            throw new IllegalArgumentException("the host of a nest is missing: " + host);
          }
          plain.made.put(host, withMembers(bytes, members));
        });
    return plain.made;
  }

  private void rewrite(byte[] bytes) {
    ClassReader reader = new ClassReader(bytes);
    Site site = Site.of(reader);
    ClassWriter writer = new ClassWriter(0);
    Rewriter rewriter = new Rewriter(writer, site);
    reader.accept(rewriter, ClassReader.EXPAND_FRAMES);
    if (rewriter.changed) {
      made.put(site.name(), writer.toByteArray());
      made.putAll(rewriter.lambdas);
      if (!rewriter.lambdas.isEmpty()) {
        joined
            .computeIfAbsent(site.host(), host -> new ArrayList<>())
            .addAll(rewriter.lambdas.keySet());
      }
    }
  }

  private static byte[] withMembers(byte[] bytes, List<String> members) {
    ClassReader reader = new ClassReader(bytes);
    ClassWriter writer = new ClassWriter(reader, 0);
    reader.accept(
        new ClassVisitor(Opcodes.ASM9, writer) {
          @Override
          public void visitEnd() {
            members.forEach(this::visitNestMember);
            super.visitEnd();
          }
        },
        0);
    return writer.toByteArray();
  }

  /**
   * Where a lambda stands.
   *
   * @param name the internal name of the class
   * @param host that of the host of its nest, often the same
   * @param version of the class file
   */
  record Site(String name, String host, int version) {
    static Site of(ClassReader reader) {
      String[] host = {reader.getClassName()};
      int[] version = {0};
      reader.accept(
          new ClassVisitor(Opcodes.ASM9) {
            @Override
            public void visit(
                int fileVersion,
                int access,
                String name,
                @Nullable String signature,
                @Nullable String superName,
                String @Nullable [] interfaces) {
              version[0] = fileVersion;
            }

            @Override
            public void visitNestHost(String nestHost) {
              host[0] = nestHost;
            }
          },
          ClassReader.SKIP_CODE);
      return new Site(reader.getClassName(), host[0], version[0]);
    }
  }

  private static final class Rewriter extends ClassVisitor {
    private final Site site;
    final Map<String, byte[]> lambdas = new LinkedHashMap<>();
    boolean changed;

    Rewriter(ClassVisitor next, Site site) {
      super(Opcodes.ASM9, next);
      this.site = site;
    }

    @Override
    public @Nullable MethodVisitor visitMethod(
        int access,
        String name,
        String descriptor,
        @Nullable String signature,
        String @Nullable [] exceptions) {
      return new Calls(super.visitMethod(access, name, descriptor, signature, exceptions));
    }

    private final class Calls extends MethodVisitor {
      private int deeper;

      Calls(@Nullable MethodVisitor next) {
        super(Opcodes.ASM9, next);
      }

      @Override
      public void visitInvokeDynamicInsn(
          String name, String descriptor, Handle bootstrap, Object... arguments) {
        if (bootstrap.getOwner().equals("java/lang/invoke/LambdaMetafactory")
            && bootstrap.getName().equals("metafactory")) {
          LambdaClass lambda =
              new LambdaClass(
                  site.name() + "$$" + lambdas.size(),
                  site,
                  Type.getMethodType(descriptor),
                  name,
                  (Type) arguments[0],
                  (Handle) arguments[1],
                  (Type) arguments[2]);
          if (lambda.isPlain()) {
            changed = true;
            lambdas.put(lambda.name(), lambda.bytes());
            lambda.call(this);
          } else {
            super.visitInvokeDynamicInsn(name, descriptor, bootstrap, arguments);
          }
        } else if (bootstrap.getOwner().equals("java/lang/runtime/ObjectMethods")) {
          changed = true;
          RecordMethod method = RecordMethod.of(site.name(), arguments);
          method.emit(name, this);
          deeper = RecordMethod.STACK;
        } else {
          super.visitInvokeDynamicInsn(name, descriptor, bootstrap, arguments);
        }
      }

      @Override
      public void visitMaxs(int maxStack, int maxLocals) {
        super.visitMaxs(Math.max(maxStack, deeper), maxLocals);
      }
    }
  }
}
