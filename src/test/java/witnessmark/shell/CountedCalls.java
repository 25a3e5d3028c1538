package witnessmark.shell;

import static net.bytebuddy.matcher.ElementMatchers.named;
import static net.bytebuddy.matcher.ElementMatchers.takesArguments;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.bytebuddy.ByteBuddy;
import net.bytebuddy.asm.Advice;
import net.bytebuddy.dynamic.ClassFileLocator;
import net.bytebuddy.implementation.bytecode.assign.Assigner;

/**
 * A second copy of the program in this process, whose calls of some methods are noted with their first argument. Its
 * classes are those that ship, with one line at the head of each of these methods.
 */
final class CountedCalls implements AutoCloseable {
    /** A call that was made. */
    record Call(String method, Object of) {}

    /** A method by its name and the types of its arguments. */
    record Noted(String method, Class<?>... arguments) {}

    private final CommandLineOf program;
    private final ClassLoader before = Thread.currentThread().getContextClassLoader();

    /** @param noted methods by the names of their classes */
    CountedCalls(Path store, Map<String, List<Noted>> noted) {
        Loader loader = new Loader(noted);
        Thread.currentThread().setContextClassLoader(loader);
        try {
            program = new CommandLineOf(loader.loadClass("witnessmark.shell.CommandLine")
                    .getConstructor(Path.class)
                    .newInstance(store));
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What the command called; refused or not. */
    List<Call> type(String line) {
        Notes.CALLS.clear();
        program.type(line);
        return List.copyOf(Notes.CALLS);
    }

    @Override
    public void close() {
        program.call("close");
        Thread.currentThread().setContextClassLoader(before);
    }

    private record CommandLineOf(Object copy) {
        void type(String line) {
            call("type", line);
        }

        private void call(String method, Object... arguments) {
            try {
                Class<?>[] types = arguments.length == 0 ? new Class<?>[0] : new Class<?>[] {String.class};
                copy.getClass().getMethod(method, types).invoke(copy, arguments);
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    /** The one class that both copies share. */
    public static final class Notes {
        static final List<Call> CALLS = new ArrayList<>();

        private Notes() {}

        public static void note(String method, Object of) {
            CALLS.add(new Call(method, of));
        }
    }

    private static final class AtTheHead {
        @Advice.OnMethodEnter
        static void enter(
                @Advice.Origin("#t.#m") String method,
                @Advice.Argument(value = 0, typing = Assigner.Typing.DYNAMIC) Object of) {
            Notes.note(method, of);
        }
    }

    private static final class Loader extends ClassLoader {
        private final Map<String, List<Noted>> noted;

        Loader(Map<String, List<Noted>> noted) {
            super(CountedCalls.class.getClassLoader());
            this.noted = noted;
        }

        @Override
        protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
            synchronized (getClassLoadingLock(name)) {
                Class<?> there = findLoadedClass(name);
                if (there != null) {
                    return there;
                }
                boolean own = name.startsWith("witnessmark.") && !name.equals(Notes.class.getName());
                return own ? defined(name) : super.loadClass(name, resolve);
            }
        }

        private Class<?> defined(String name) throws ClassNotFoundException {
            try {
                ClassFileLocator files = ClassFileLocator.ForClassLoader.of(getParent());
                if (!files.locate(name).isResolved()) {
                    throw new ClassNotFoundException(name);
                }
                byte[] bytes = noted.containsKey(name)
                        ? withNote(Class.forName(name, false, getParent()), noted.get(name), files)
                        : files.locate(name).resolve();
                return defineClass(name, bytes, 0, bytes.length);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        private static byte[] withNote(Class<?> type, List<Noted> noted, ClassFileLocator files) {
            var noting = new ByteBuddy().redefine(type, files);
            for (Noted one : noted) {
                noting = noting.visit(
                        Advice.to(AtTheHead.class).on(named(one.method()).and(takesArguments(one.arguments()))));
            }
            return noting.make().getBytes();
        }
    }
}
