package witnessmark;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the program. */
@SpringBootApplication
public class Witnessmark {
    public static void main(String[] args) {
        System.exit(SpringApplication.exit(SpringApplication.run(Witnessmark.class, args)));
    }
}
