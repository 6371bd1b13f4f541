package county.bigtree.domain;

import java.time.Instant;
import java.time.LocalDate;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

@AnalyzeClasses(packages = "county.bigtree.domain", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

	@ArchTest
	static final ArchRule THE_DOMAIN_NEEDS_NO_FRAMEWORK = classes().should()
		.onlyDependOnClassesThat()
		.resideInAnyPackage("county.bigtree.domain..", "java..", "org.jspecify..")
		.because("the rules outlive any framework, and are published as a library of their own")
		.allowEmptyShould(false);

	@ArchTest
	static final ArchRule PACKAGES_DEPEND_ONE_WAY = slices().matching("county.bigtree.domain.(*)..")
		.should()
		.beFreeOfCycles()
		.because("each feature should be understood, and tested, without the ones that build on it")
		.allowEmptyShould(false);

	@ArchTest
	static final ArchRule NO_RULE_ASKS_WHAT_TIME_IT_IS = noClasses().should()
		.callMethod(LocalDate.class, "now")
		.orShould()
		.callMethod(Instant.class, "now")
		.orShould()
		.callMethod(System.class, "currentTimeMillis")
		.because("a rule gives the same answer for the same facts, whenever it is asked")
		.allowEmptyShould(false);

}
